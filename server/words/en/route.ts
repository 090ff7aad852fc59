import { SKETCHY_FACTOR } from '../../core/gaps/course/even-course.ts';
import type { RouteRefusals } from '../../core/phrases/route.ts';
import type { Catalogue, RouteRefusalSayings } from '../parts/catalogue.ts';
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
  'laid-off-route': ({ atM }) =>
    parts`A supply laid at ${placeAt(atM)} lies past the end of the route and is left out.`,
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
    parts`${steps} step(s) between points are longer than ${rounded(kmOf(overM), 'km', 9)}, the longest ${length(longestM)}: there the line may not be the road: it counts × ${SKETCHY_FACTOR}, and a gap that is more than a fifth of such steps, or where one turns sharply at an end, is at best unknown. If the road is straight there, say so in the trip (routeIsRoad: true)`,
  ferry: ({ name, hours, isMapped }) =>
    parts`Taken for a ferry${name === null ? '' : ` (${name})`}: no fuel is burnt and nothing is sought on it; it takes ${rounded(hours, 'h')}${isMapped ? '' : ' (not mapped, reckoned slow)'}, waiting for it not reckoned`,
  'routes-left-out': ({ tracks, routes }) =>
    parts`The file holds ${tracks} track(s) and ${routes} route(s): the tracks are followed, the routes left out; choose a part to follow one of those`,
} satisfies Partial<Catalogue['cautions']>;

/** Names listed in a refusal before it becomes unreadable. */
const LISTED = 12;

function listOf(all: RouteRefusals['part-unknown']['parts']): string {
  const shown = all
    .slice(0, LISTED)
    .map(({ kind, name }, index) => `${index + 1} ${kind} "${name ?? 'unnamed'}"`);
  const more = all.length > LISTED ? [`and ${all.length - LISTED} more`] : [];
  return [...shown, ...more].join(', ');
}

/** Why no route can be made of a file. */
export const ROUTE_REFUSALS: RouteRefusalSayings = {
  'gpx-no-points': ({ chosen, waypoints }) => ({
    place: null,
    came: chosen ? 'the chosen part has no points' : 'no track and no route with points',
    expected: 'a track or route with at least two points',
    remedy: waypoints
      ? 'Waypoints alone are no route: export the track or route itself'
      : 'Export the track or route again and check that it is not empty',
  }),
  'gpx-one-point': ({ points }) => ({
    place: null,
    came: points === 1 ? 'a single point' : `${points} points, all at one place`,
    expected: 'a line of at least two points at different places',
    remedy: 'Export the whole track or route',
  }),
  'gpx-too-long': ({ mostM }) => ({
    place: null,
    came: `a line of more than ${kmOf(mostM)} km`,
    expected: 'a route that can be driven',
    remedy: 'Choose one part of the file, or look for points that lie far from the route',
  }),
  'part-unknown': ({ wanted, bearers, parts: all }) => ({
    place: 'part',
    came:
      bearers > 1 ? `the name "${wanted}", which ${bearers} parts bear` : `part ${JSON.stringify(wanted)}`,
    expected: all.length === 0 ? 'a file with tracks or routes' : `"all" or one of: ${listOf(all)}`,
    remedy: bearers > 1 ? 'Give the number of the part' : 'Give "all", or a number or name from that list',
  }),
};
