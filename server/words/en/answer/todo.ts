import type { SpanM } from '../../../core/quantity/span.ts';
import { figure, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, type Parts, parts, type Words } from '../../parts/part.ts';
import type { SaidStretch } from '../../parts/said-place.ts';
import { capital, placed } from './shared.ts';

/** How many cans a stretch takes, and how many of them are still to be had. */
interface Cans {
  readonly cans: number;
  readonly toGet: number;
  /** What one holds, where it is said. */
  readonly canL: number | null;
}

const strong = (text: string): Words => ({ text, strong: true });

const between = ({ from, to }: SaidStretch): Part[] => parts`from ${placed(from)} to ${placed(to)}`;

const moreStretches = (more: number): string =>
  `, and on ${more} more ${more === 1 ? 'stretch' : 'stretches'}`;

const of = (what: string, stretches: readonly Parts[], more: number): Part[] =>
  parts`${capital(what)}: ${joined(stretches, ', ')}${more > 0 ? `${moreStretches(more)} (see the gaps).` : '.'}`;

/** What to do before leaving. `what` is a commodity, inside a sentence; `more` counts the stretches that are not named. */
export const TODO_WORDS = {
  sayOnward: () => parts`Say how far it is from the end of the route to the next supply.`,
  leaveFull: (allHolds: boolean) =>
    parts`Leave with everything full${allHolds ? ': every stretch holds with the reserve' : ''}. Confirm each supply before you leave.`,
  closed: ({ fromM, toM }: SpanM) =>
    parts`Find another way or another time: you noted the route as ${strong('closed')} from ${placeAt(fromM)} to ${placeAt(toM)}.`,
  fill: (what: string, litres: number) =>
    parts`${capital(what)}: ${strong('fill')} at least ${rounded(litres, 'l')} more before leaving.`,
  carry: of,
  inNoCan: (what: string, stretches: readonly Parts[], more: number) =>
    parts`${of(what, stretches, more)} It goes in no can: find another supply, or another way.`,
  cans: ({ cans, toGet, canL }: Cans, stretch: SaidStretch) => {
    const size = canL === null ? [] : parts` of ${figure(canL, 'l')}`;
    const more = toGet > 0 ? `, ${toGet} more than you own` : '';
    const count = strong(`${cans} ${cans === 1 ? 'can' : 'cans'}`);
    return parts`${count}${size} ${between(stretch)}${more}`;
  },
  missing: (litres: number, stretch: SaidStretch) =>
    parts`${rounded(litres, 'l')} are missing ${between(stretch)}`,
  getData: (what: string) =>
    parts`Get map data that tells of ${what}: an extract of the whole region (.osm.pbf), not one cut down to something else; or mark what you know of as waypoints of the route.`,
  findOut: (what: string, { fromM, toM }: SpanM, more: number) =>
    parts`Find out where there is ${what} between ${placeAt(fromM)} and ${placeAt(toM)}${more > 0 ? moreStretches(more) : ''}.`,
};
