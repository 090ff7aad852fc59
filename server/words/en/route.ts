import type { Catalogue } from '../parts/catalogue.ts';
import { fixed, kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';

export const ROUTE_CAUTIONS = {
  'no-cover': ({ commodity }) => parts`No extract shows ${commodity} here: reckoned as dry.`,
  'start-assumed-full': ({ commodity }) =>
    parts`What ${commodity} is aboard at the start was not told: reckoned as full. Say how much there is.`,
  'onward-unknown': () =>
    parts`How far it is from the end of the route to the next supply was not told. Say so: 0 km when it is there.`,
  'camp-off-route': (facts) =>
    'pastEndAtM' in facts
      ? parts`The camp at ${placeAt(facts.pastEndAtM)} lies past the end of the route and is left out.`
      : parts`The camp "${facts.name ?? 'unnamed'}" is ${fixed(kmOf(facts.offM), 'km')} off the route and is left out.`,
  'stay-off-route': ({ atM }) =>
    parts`A stay at ${placeAt(atM)} lies past the end of the route and is charged at its end.`,
} satisfies Partial<Catalogue['cautions']>;

/** A length as short as it can be read. */
function length(metres: number): Parts {
  if (metres < 1) return parts`less than a metre`;
  return metres < 1000 ? [rounded(metres, 'm', 0)] : [fixed(kmOf(metres), 'km')];
}

export const LINE_CAUTIONS = {
  bridge: ({ atM, jumpM, sought }) =>
    parts`The line breaks off at ${{ place: kmOf(atM), decimals: 1, fixed: true }}: a jump of ${length(jumpM)} is bridged by a straight line${sought ? '' : ', on which no supply is sought'}`,
  'sparse-steps': ({ steps, longestM, overM }) =>
    parts`${steps} step(s) between points are longer than ${rounded(kmOf(overM), 'km', 9)}, the longest ${length(longestM)}: there the line is not the road, and gaps across it are at best unknown`,
  'routes-left-out': ({ tracks, routes }) =>
    parts`The file holds ${tracks} track(s) and ${routes} route(s): the tracks are followed, the routes left out; choose a part to follow one of those`,
} satisfies Partial<Catalogue['cautions']>;
