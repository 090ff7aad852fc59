import type { Verdict } from '../../../contract/common.ts';
import type { Doubt } from '../../../core/gaps/course/course.ts';
import type { SpanM } from '../../../core/quantity/span.ts';
import { figure, kmOf, placeAt } from '../../parts/figures.ts';
import { type Figure, joined, type Part, type Parts, parts, type Words } from '../../parts/part.ts';
import type { SaidPlace, SaidStretch } from '../../parts/said-place.ts';
import { lowered, placed } from './shared.ts';

interface Detour extends SaidPlace {
  readonly detourM: number;
}

/** What is left on arrival; `drinking` where it is what is fit to drink that is spoken of. */
interface Arrival {
  readonly arriveL: number;
  readonly marginL: number;
  readonly drinking: boolean;
}

const km = (metres: number): Figure => figure(kmOf(metres), 'km');

const where = ({ from, to }: SaidStretch): Part[] =>
  parts`${from.name} to ${to.name}, ${placeAt(from.atM)} to ${placeAt(to.atM)}.`;

const between = ({ fromM, toM }: SpanM): Part[] => parts`from ${placeAt(fromM)} to ${placeAt(toM)}`;

const stressed = (text: string, verdict: Verdict): Words => ({ text, strong: true, verdict });

const left = ({ arriveL, drinking }: Arrival): Part[] =>
  parts`Arrives with ${figure(arriveL, 'l')}${drinking ? ' of drinking water' : ''}`;

const lasts = (share: number, { figure: needed, unit }: Figure): Part[] =>
  parts`What is aboard lasts ${figure(share * needed, unit)} of the ${figure(needed, unit)} needed, the reserve spent.`;

/** Why nobody knows, by what is not known of the way. */
const WHY_UNKNOWN: Record<Doubt['of'], (span: SpanM) => Part[]> = {
  bridge: (span) => parts`: the route breaks off ${between(span)}.`,
  via: (span) => parts`: the route goes straight to a chosen point ${between(span)}, not along the road.`,
  sparse: (span) => parts`: the route gives straight lines, the longest ${between(span)}, not the road.`,
  closed: (span) =>
    parts`: you noted the route as closed ${between(span)}, and what another way takes is not known.`,
  onward: () => parts`: where the next supply is past the end is not told.`,
};

/** What the longest stretch comes to. Places and litres as they are; names come in as they are said. */
export const SAID_WORDS = {
  where,
  worse: (stretch: SaidStretch, outcome: Parts) => parts`Worse: ${where(stretch)} ${outcome}`,
  manyDetours: (overM: number, { count, longest }: { count: number; longest: Detour }) =>
    parts`Rests on ${count} detours of over ${km(overM)}, one way, the longest ${km(longest.detourM)} to ${placed(longest)}.`,
  detours: (overM: number, ends: readonly Detour[]) =>
    parts`Rests on detours of over ${km(overM)}, one way: ${joined(
      ends.map((end) => parts`${placed(end)} ${km(end.detourM)}`),
      ', ',
    )}.`,
  noData: (what: string) =>
    parts`${stressed(`No extract tells of ${what} on this route`, 'unknown')}: neither where it is nor that there is none.`,
  lastsDays: (share: number, days: number) => lasts(share, figure(days, 'days')),
  lastsWay: (share: number, wayM: number) => lasts(share, km(wayM)),
  enough: (arrival: Arrival, notes: Parts) =>
    parts`${left(arrival)}, ${figure(arrival.marginL, 'l')} above the reserve.${notes}`,
  intoReserve: (arrival: Arrival, notes: Parts) =>
    parts`${left(arrival)}: ${stressed('eats into the reserve by ', 'into-reserve')}${figure(-arrival.marginL, 'l')}.${notes}`,
  runsDry: () => parts`${stressed('Runs dry on the way.', 'short')}`,
  runsDryAt: (atM: number, extraL: number) =>
    parts`${stressed('Runs dry at ', 'short')}${placeAt(atM)}. Missing with the reserve: ${figure(extraL, 'l')}.`,
  nobodyKnows: (why: Parts) => parts`${stressed('Nobody knows', 'unknown')}${why}`,
  whyUnknown: WHY_UNKNOWN,
  noDataToCross: () => parts`: part of it is without map data, and what is aboard does not reach across.`,
  /** Follows a sentence. */
  acrossNoData: () => parts` Part of it is without map data and is reckoned as dry.`,
  /** Follows a sentence. */
  straight: (span: SpanM, factor: number) =>
    parts` The route runs straight ${between(span)}: counted × ${factor}.`,
  doesNotCount: (place: SaidPlace, why: string | null) =>
    parts`${placed(place)} does not count: ${lowered(why ?? 'does not count')}.`,
};
