import type { Direction } from '../../core/phrases/notes.ts';
import type { SupplyKind } from '../../core/phrases/said/supply-kinds.ts';
import type { Catalogue, Say } from '../parts/catalogue.ts';
import { kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { called } from './places/called.ts';

const DIRECTIONS: Record<Direction, string> = {
  n: 'N',
  ne: 'NE',
  e: 'E',
  se: 'SE',
  s: 'S',
  sw: 'SW',
  w: 'W',
  nw: 'NW',
};

/** "Drinking water" is what is had there, not what one looks for. */
const objectOf = (kind: SupplyKind, say: Say): Parts =>
  kind.phrase === 'drinking-water' ? parts`drinking-water tap` : say(kind);

export const NOTE_CAUTIONS = {
  'confirm-before-leaving': ({ name, on, from }, say) =>
    parts`${called(name, say)} was confirmed on ${on}, long before the departure: it counts, but confirm it again before leaving, from ${from} on.`,
} satisfies Partial<Catalogue['cautions']>;

export const NOTE_PHRASES = {
  'supply-where': ({ kind, atM, near }, say) =>
    parts`${objectOf(kind, say)}, ${placeAt(atM, 0)}${near === null ? [] : parts`, ${rounded(kmOf(near.offM), 'km')} ${DIRECTIONS[near.direction]} of ${near.name}`}`,
} satisfies Partial<Catalogue['phrases']>;
