import type { Commodity, Evidence, Verdict } from '../../contract/common.ts';
import { SKETCHY_FACTOR } from '../../core/gaps/course/even-course.ts';
import type { Gap, Report } from '../../core/gaps/gap.ts';
import { VERDICT_RANK } from '../../core/gaps/verdict.ts';
import type { SpanM } from '../../core/quantity/span.ts';
import { figure, kmOf, placeAt } from '../parts/figures.ts';
import { joined, type Part, parts, type Words } from '../parts/part.ts';
import { textOf } from '../words-of.ts';
import type { AnswerFacts } from './answer-facts.ts';
import { commodityWord, edgeName, nameText, stretchName } from './names.ts';

/** What the longest stretch of a commodity comes to, what is passed over inside it, and a worse one where there is one. */
export function saidOf(commodity: Commodity, facts: AnswerFacts): Part[][] {
  const report = facts[commodity];
  const longest = report.gaps[report.longest];
  if (longest === undefined) return [];
  if (facts.noData.includes(commodity)) return withoutData(commodity, longest, facts);
  const worst = worstOf(report, longest);
  const inside = passedOver(commodity, longest, facts.passings);
  const isWorse = worst !== longest && worst.verdict !== 'enough' && worst.verdict !== longest.verdict;
  return [
    parts`${whereIs(longest)}.`,
    outcomeOf(longest),
    ...(inside === null ? [] : [inside]),
    ...(isWorse ? [parts`Worse: ${whereIs(worst)}. ${outcomeOf(worst)}`] : []),
    ...detoursOf(report),
  ];
}

/** A detour of more than this is told on top, metres one way (ours). */
const LONG_DETOUR_M = 1_000;
/** Detours that are named. */
const NAMED_DETOURS = 3;

/** The long detours that verdicts rest on, the longest first; of many only the longest. */
function detoursOf({ gaps }: Report): Part[][] {
  const ends = gaps
    .map(({ to }) => to)
    .filter(({ detourM }) => detourM > LONG_DETOUR_M)
    .toSorted((a, b) => b.detourM - a.detourM);
  const [longest] = ends;
  if (longest === undefined) return [];
  const over = figure(kmOf(LONG_DETOUR_M), 'km');
  if (ends.length > NAMED_DETOURS)
    return [
      parts`Rests on ${ends.length} detours of over ${over}, one way, the longest ${figure(kmOf(longest.detourM), 'km')} to ${edgeName(longest)} (${placeAt(longest.atM)}).`,
    ];
  const named = ends.map(
    (end) => parts`${edgeName(end)} (${placeAt(end.atM)}) ${figure(kmOf(end.detourM), 'km')}`,
  );
  return [parts`Rests on detours of over ${over}, one way: ${joined(named, ', ')}.`];
}

/** Of what nobody has any data: how far what is aboard goes of what is needed, and no stretch of any length. */
function withoutData(commodity: Commodity, gap: Gap, { rig }: AnswerFacts): Part[][] {
  const what = commodityWord(commodity, rig.fuel.kind);
  const share = gap.needL > 0 ? Math.min(1, gap.departL / gap.needL) : 1;
  const [needed, unit] = commodity === 'water' ? [gap.days, 'days' as const] : [gap.wayM, 'km' as const];
  const needs = unit === 'km' ? kmOf(needed) : needed;
  return [
    parts`${{ text: `No extract tells of ${what} on this route`, strong: true, verdict: 'unknown' as const }}: neither where it is nor that there is none.`,
    parts`What is aboard lasts ${figure(share * needs, unit)} of the ${figure(needs, unit)} needed, the reserve spent.`,
  ];
}

const whereIs = (gap: Gap): Part[] =>
  parts`${stretchName(gap)}, ${placeAt(gap.from.atM)} to ${placeAt(gap.to.atM)}`;

/** The gap with the worst verdict; among equals the one with the least margin, then the first. */
function worstOf(report: Report, first: Gap): Gap {
  return report.gaps.reduce((worst, gap) => {
    const by = VERDICT_RANK[gap.verdict] - VERDICT_RANK[worst.verdict];
    return by < 0 || (by === 0 && tightest(gap).marginL < tightest(worst).marginL) ? gap : worst;
  }, report.gaps[0] ?? first);
}

/** What runs out first, where water is kept in grades: all of it, or what is fit to drink. */
function tightest(gap: Gap): { arriveL: number; marginL: number; what: string } {
  const drinking = gap.grades?.drinking;
  return drinking !== undefined && drinking.marginL < gap.marginL
    ? { arriveL: drinking.arriveL, marginL: drinking.marginL, what: ' of drinking water' }
    : { arriveL: gap.arriveL, marginL: gap.marginL, what: '' };
}

const stressed = (text: string, verdict: Verdict): Words => ({ text, strong: true, verdict });

function outcomeOf(gap: Gap): Part[] {
  const { arriveL, marginL, what } = tightest(gap);
  const noData = parts`${gap.acrossNoData ? ' Part of it is without map data and is reckoned as dry.' : ''}${straightSteps(gap)}`;
  switch (gap.verdict) {
    case 'enough':
      return parts`Arrives with ${figure(arriveL, 'l')}${what}, ${figure(marginL, 'l')} above the reserve.${noData}`;
    case 'into-reserve':
      return parts`Arrives with ${figure(arriveL, 'l')}${what}: ${stressed('eats into the reserve by ', 'into-reserve')}${figure(-marginL, 'l')}.${noData}`;
    case 'short':
      return gap.runsDryM === null
        ? parts`${stressed('Runs dry on the way.', 'short')}`
        : parts`${stressed('Runs dry at ', 'short')}${placeAt(gap.runsDryM)}. Missing with the reserve: ${figure(gap.extraL, 'l')}.`;
    case 'unknown':
      return parts`${stressed('Nobody knows', 'unknown')}${whyUnknown(gap)}`;
  }
}

/** The step that is taken for a straight road, where the verdict stands on it. */
function straightSteps({ doubt, verdict }: Gap): Part[] {
  if (doubt === null || verdict === 'unknown' || doubt.of !== 'sparse') return [];
  return parts` The route runs straight ${between(doubt)}: counted × ${SKETCHY_FACTOR}.`;
}

const between = ({ fromM, toM }: SpanM): Part[] => parts`from ${placeAt(fromM)} to ${placeAt(toM)}`;

function whyUnknown(gap: Gap): Part[] {
  const { doubt } = gap;
  if (tightest(gap).arriveL < 0 || doubt === null || !doubt.leavesUnknown)
    return parts`: part of it is without map data, and what is aboard does not reach across.`;
  switch (doubt.of) {
    case 'bridge':
      return parts`: the route breaks off ${between(doubt)}.`;
    case 'via':
      return parts`: the route goes straight to a chosen point ${between(doubt)}, not along the road.`;
    case 'sparse':
      return parts`: the route gives straight lines, the longest ${between(doubt)}, not the road.`;
    case 'onward':
      return parts`: where the next supply is past the end is not told.`;
  }
}

const STRENGTH: Record<Evidence, number> = { confirmed: 0, stated: 1, implied: 2, doubtful: 3 };

/** The strongest-known supply inside a stretch that does not count, and why: the one people would ask about. */
function passedOver(commodity: Commodity, gap: Gap, passings: AnswerFacts['passings']): Part[] | null {
  if (gap.verdict === 'enough') return null;
  const [inside] = passings
    .filter(
      (passing) =>
        passing.commodity === commodity &&
        !passing.counts &&
        passing.waterClass !== 'none' &&
        passing.atM > gap.from.atM &&
        passing.atM < gap.to.atM,
    )
    .sort((a, b) => STRENGTH[a.evidence] - STRENGTH[b.evidence] || a.atM - b.atM);
  if (inside === undefined) return null;
  const [reason] = inside.reasons;
  const why = reason === undefined ? 'does not count' : textOf(reason);
  return parts`${nameText(inside.name ?? inside.kind)} (${placeAt(inside.atM)}) does not count: ${lowered(why)}.`;
}

/** A sentence inside another: no full stop, no capital but of an abbreviation. */
function lowered(text: string): string {
  const bare = text.endsWith('.') ? text.slice(0, -1) : text;
  const [first = '', second = ''] = bare;
  const isWord = second === ' ' || (second >= 'a' && second <= 'z');
  return isWord && first >= 'A' && first <= 'Z' ? first.toLowerCase() + bare.slice(1) : bare;
}
