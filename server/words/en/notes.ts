import type { ChangedTag, Direction, NearSupply } from '../../core/phrases/notes.ts';
import type { SupplyKind } from '../../core/phrases/said/supply-kinds.ts';
import type { Catalogue, Say } from '../parts/catalogue.ts';
import { kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { noted } from './noted.ts';
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

/** "Far pump (node/3) is 40 m from". */
const nearWords = ({ id, name, offM }: NearSupply): Parts =>
  parts`${name === null ? id : `${name} (${id})`} is ${rounded(offM, 'm', 0)} from`;

const changeWords = ({ key, before, now }: ChangedTag): string =>
  before === null
    ? `${key}=${now} is new`
    : now === null
      ? `${key}=${before} is gone`
      : `${key}=${before} is now ${now}`;

export const NOTE_CAUTIONS = {
  'confirm-before-leaving': ({ name, on, from }, say) =>
    parts`${called(name, say)} was confirmed on ${on}, long before the departure: it counts, but confirm it again before leaving, from ${from} on.`,
  'route-closed': ({ from, until, ...note }) =>
    parts`Closed${from === undefined ? '' : ` from ${from}`}${until === undefined ? '' : ` until ${until}`} (you noted it on ${noted(note)}): the route cannot be driven here as it is. Find another way, or another time.`,
  'note-object-gone': ({ id, on, near }) =>
    parts`What you noted of ${id} on ${on} finds no such supply on the map any more${near === null ? '' : parts`; ${nearWords(near)} its place`}: look up what became of it, and note it anew.`,
  'note-object-moved': ({ id, name, on, movedM }) =>
    parts`${name ?? id} stands ${rounded(movedM, 'm', 0)} from where it was when you noted something of it on ${on}: see that it is the same.`,
  'note-object-changed': ({ id, name, on, changes }) =>
    parts`${name ?? id} was changed on the map since you noted something of it on ${on}: ${changes.map(changeWords).join(', ')}. See that your note still holds.`,
  'note-new-nearby': ({ id, name, on, near }) =>
    parts`Since you noted something of ${name ?? id} on ${on} a new supply has come: ${nearWords(near)} it. It may be the same.`,
  'closed-off-route': ({ atM }) => parts`A closed stretch at ${placeAt(atM)} lies past the end of the route.`,
} satisfies Partial<Catalogue['cautions']>;

export const NOTE_PHRASES = {
  'coordinate-two-wanted': () => parts`two co-ordinates, latitude and longitude, were not found`,
  'coordinate-mixed-up': () =>
    parts`degrees, minutes and seconds do not stand in that order, each below 60 and only the last with decimals`,
  'coordinate-one-letter': () => parts`only one of the two has a letter of its hemisphere`,
  'coordinate-same-axis': () => parts`both are latitudes, or both are longitudes`,
  'coordinate-comma-unclear': () => parts`a comma may stand for a decimal point or between the two`,
  'coordinate-letter-unclear': ({ letter }) =>
    parts`"${letter}" is west in some languages and east in others`,
  'coordinate-not-read': ({ character }) => parts`"${character}" is no part of co-ordinates`,
  'coordinate-latitude-beyond': ({ degrees }) => parts`a latitude of ${degrees} degrees, which comes first`,
  'coordinate-longitude-beyond': ({ degrees }) => parts`a longitude of ${degrees} degrees`,
  'noted-by-you': (note) => parts`you noted it on ${noted(note)}`,
  'supply-where': ({ kind, atM, near }, say) =>
    parts`${objectOf(kind, say)}, ${placeAt(atM, 0)}${near === null ? [] : parts`, ${rounded(kmOf(near.offM), 'km')} ${DIRECTIONS[near.direction]} of ${near.name}`}`,
} satisfies Partial<Catalogue['phrases']>;
