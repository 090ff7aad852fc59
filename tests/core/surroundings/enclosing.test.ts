import { describe, expect, it } from 'vitest';
import type { Surrounding, SurroundingKind } from '../../../server/core/input/sources.ts';
import { Enclosing } from '../../../server/core/surroundings/enclosing.ts';

/** A square ring around a place, degrees from its middle to its sides. */
const square = (lon: number, lat: number, halfDeg: number): Float64Array =>
  Float64Array.of(
    ...[lon - halfDeg, lat - halfDeg, lon + halfDeg, lat - halfDeg, lon + halfDeg, lat + halfDeg],
    ...[lon - halfDeg, lat + halfDeg, lon - halfDeg, lat - halfDeg],
  );

const land = (id: string, what: SurroundingKind, ...lines: Float64Array[]): Surrounding => ({
  id,
  what,
  name: null,
  lines,
});
const idsAround = (objects: readonly Surrounding[], lon: number, lat: number, but: string[] = []) =>
  new Enclosing({ objects, roads: [] }).around({ lon, lat }, but).map(({ id }) => id);

describe('closed ground', () => {
  const range = land('way/2', 'military', square(10, 45, 0.1), square(10, 45, 0.02));

  it('holds what lies inside its ring, and not what lies beside it or in its hole', () => {
    expect(idsAround([range], 10.05, 45.05)).toEqual(['way/2']);
    expect(idsAround([range], 10, 45)).toEqual([]);
    expect(idsAround([range], 10.11, 45)).toEqual([]);
    expect(idsAround([range], 9.89, 45.05)).toEqual([]);
    expect(idsAround([range], 10, 45.11)).toEqual([]);
  });

  it('is told in the order of ids, those left out that are asked for themselves', () => {
    const prison = land('way/1', 'prison', square(10, 45, 0.1));
    expect(idsAround([range, prison], 10.05, 45.05)).toEqual(['way/1', 'way/2']);
    expect(idsAround([range, prison], 10.05, 45.05, ['way/1'])).toEqual(['way/2']);
  });

  it('is none where the ground is open to everybody', () => {
    expect(idsAround([land('way/3', 'lake', square(10, 45, 0.1))], 10, 45)).toEqual([]);
    expect(idsAround([], 10, 45)).toEqual([]);
  });
});
