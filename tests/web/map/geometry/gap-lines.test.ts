import { describe, expect, test } from 'vitest';
import { gapLines } from '../../../../web/map/geometry/gap-lines.ts';
import { nameAnchors, westOf } from '../../../../web/map/style/name-anchors.ts';
import { sampleReply } from '../../sample-reply.ts';

const { map, analysis } = sampleReply();

describe('the lines of gaps', () => {
  test('are one for each gap, with its verdict', () => {
    const lines = gapLines(map).map(({ properties }) => properties);
    const expected = (['fuel', 'water'] as const).flatMap((commodity) =>
      analysis[commodity].gaps.map((gap, i) => ({ commodity, gap: i, verdict: gap.verdict })),
    );
    expect(lines).toEqual(expected);
  });

  test('hold every position of their pieces once', () => {
    const [first] = gapLines(map);
    const pieces = map.route.features.filter(
      ({ properties }) => properties.commodity === 'fuel' && properties.gap === 0,
    );
    const positions = pieces.flatMap(({ geometry }) => geometry.coordinates.map(String));
    expect(first!.geometry.coordinates.map(String)).toEqual([...new Set(positions)]);
  });

  test('leave the pieces as they are', () => {
    const before = JSON.stringify(map);
    gapLines(map);
    expect(JSON.stringify(map)).toBe(before);
  });
});

describe('names on the map', () => {
  test('stand east of points in the west, and the other way round', () => {
    expect([86, 88.9, 89.1, 92].map(westOf(map))).toEqual([true, true, false, false]);
    const [, , west, east] = nameAnchors([2]) as [string, unknown, [string, unknown[]], [string, unknown[]]];
    expect(west[1].slice(0, 2)).toEqual(['left', [2, 0]]);
    expect(east[1].slice(0, 2)).toEqual(['right', [-2, 0]]);
  });

  test('try every side once', () => {
    const [, , west] = nameAnchors([1]) as [string, unknown, [string, unknown[]]];
    const anchors = west[1].filter((part) => typeof part === 'string');
    expect(new Set(anchors).size).toBe(8);
    expect(anchors).toHaveLength(8);
  });
});
