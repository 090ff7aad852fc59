import type { Commodity, Evidence } from '../../contract/common.ts';
import { SKETCHY_FACTOR } from '../../core/gaps/course/even-course.ts';
import type { Gap, GapEdge, Report } from '../../core/gaps/gap.ts';
import { VERDICT_RANK } from '../../core/gaps/verdict.ts';
import { answerWords } from '../answered.ts';
import { metricText } from '../parts/metric.ts';
import { type Part, withoutTags } from '../parts/part.ts';
import type { SaidStretch } from '../parts/said-place.ts';
import { wordsOf } from '../words-of.ts';
import type { AnswerFacts } from './answer-facts.ts';
import { commodityWord, namedEdge, nameText } from './names.ts';

const words = () => answerWords().said;

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
    words().where(stretchOf(longest)),
    outcomeOf(longest),
    ...(inside === null ? [] : [inside]),
    ...(isWorse ? [words().worse(stretchOf(worst), outcomeOf(worst))] : []),
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
  if (ends.length > NAMED_DETOURS)
    return [words().manyDetours(LONG_DETOUR_M, { count: ends.length, longest: detourTo(longest) })];
  return [words().detours(LONG_DETOUR_M, ends.map(detourTo))];
}

const detourTo = (edge: GapEdge) => ({ ...namedEdge(edge), detourM: edge.detourM });

/** Of what nobody has any data: how far what is aboard goes of what is needed, and no stretch of any length. */
function withoutData(commodity: Commodity, gap: Gap, { rig }: AnswerFacts): Part[][] {
  const what = commodityWord(commodity, rig.fuel.kind);
  const share = gap.needL > 0 ? Math.min(1, gap.departL / gap.needL) : 1;
  return [
    words().noData(what),
    commodity === 'water' ? words().lastsDays(share, gap.days) : words().lastsWay(share, gap.wayM),
  ];
}

const stretchOf = ({ from, to }: Gap): SaidStretch => ({ from: namedEdge(from), to: namedEdge(to) });

/** The gap with the worst verdict; among equals the one with the least margin, then the first. */
function worstOf(report: Report, first: Gap): Gap {
  return report.gaps.reduce((worst, gap) => {
    const by = VERDICT_RANK[gap.verdict] - VERDICT_RANK[worst.verdict];
    return by < 0 || (by === 0 && tightest(gap).marginL < tightest(worst).marginL) ? gap : worst;
  }, report.gaps[0] ?? first);
}

/** What runs out first, where water is kept in grades: all of it, or what is fit to drink. */
function tightest(gap: Gap): { arriveL: number; marginL: number; drinking: boolean } {
  const drinking = gap.grades?.drinking;
  return drinking !== undefined && drinking.marginL < gap.marginL
    ? { arriveL: drinking.arriveL, marginL: drinking.marginL, drinking: true }
    : { arriveL: gap.arriveL, marginL: gap.marginL, drinking: false };
}

function outcomeOf(gap: Gap): Part[] {
  const notes = [...(gap.acrossNoData ? words().acrossNoData() : []), ...straightSteps(gap)];
  switch (gap.verdict) {
    case 'enough':
      return words().enough(tightest(gap), notes);
    case 'into-reserve':
      return words().intoReserve(tightest(gap), notes);
    case 'short':
      return gap.runsDryM === null ? words().runsDry() : words().runsDryAt(gap.runsDryM, gap.extraL);
    case 'unknown':
      return words().nobodyKnows(whyUnknown(gap));
  }
}

/** The step that is taken for a straight road, where the verdict stands on it. */
const straightSteps = ({ doubt, verdict }: Gap): Part[] =>
  doubt === null || verdict === 'unknown' || doubt.of !== 'sparse'
    ? []
    : words().straight(doubt, SKETCHY_FACTOR);

const whyUnknown = (gap: Gap): Part[] =>
  tightest(gap).arriveL < 0 || gap.doubt === null || !gap.doubt.leavesUnknown
    ? words().noDataToCross()
    : words().whyUnknown[gap.doubt.of](gap.doubt);

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
  const place = { name: nameText(inside.name ?? inside.kind), atM: inside.atM };
  return words().doesNotCount(place, reason === undefined ? null : metricText(withoutTags(wordsOf(reason))));
}
