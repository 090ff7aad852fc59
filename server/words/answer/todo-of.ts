import type { Commodity } from '../../contract/common.ts';
import type { Gap, Report } from '../../core/gaps/gap.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { answerWords } from '../answered.ts';
import { upToTenth } from '../parts/figures.ts';
import type { Part } from '../parts/part.ts';
import type { AnswerFacts } from './answer-facts.ts';
import { commodityWord, namedEdge } from './names.ts';

const words = () => answerWords().todo;

/** At most this many stretches are named for each commodity in what to do; the rest are counted. */
const NAMED_STRETCHES = 2;

/** What to do: what to carry, what to find out, and to leave with everything full. */
export function todoOf(facts: AnswerFacts): Part[][] {
  const carries = COMMODITIES.flatMap((commodity) => [
    ...fillOf(commodity, facts),
    ...carryOf(commodity, facts),
  ]);
  const asks = COMMODITIES.flatMap((commodity) => askOf(commodity, facts));
  if (!facts.onwardTold) asks.push(words().sayOnward());
  return [
    ...facts.cautions.flatMap(closedOf),
    ...carries,
    ...asks,
    words().leaveFull(carries.length + asks.length === 0),
  ];
}

/** That the route is closed somewhere goes before all else. */
const closedOf = ({ code, fromM = 0, toM = fromM }: AnswerFacts['cautions'][number]): Part[][] =>
  code === 'route-closed' ? [words().closed({ fromM, toM })] : [];

/** Whether what a gap lacks has room in the fixed tanks, since the trip starts with less. */
const isFilledFirst = ({ from, extraL, departL }: Gap, { capacityL }: Report): boolean =>
  from.kind === 'start' && extraL > 0 && extraL <= capacityL - departL;

/** One sentence for a commodity that the trip starts with too little of: what to fill before leaving. */
function fillOf(commodity: Commodity, { rig, ...facts }: AnswerFacts): Part[][] {
  if (facts.noData.includes(commodity)) return [];
  const report = facts[commodity];
  const first = report.gaps.find((gap) => isFilledFirst(gap, report));
  if (first === undefined) return [];
  return [words().fill(commodityWord(commodity, rig.fuel.kind), upToTenth(first.extraL))];
}

/** One sentence for a commodity: how many cans over which stretches. */
function carryOf(commodity: Commodity, { rig, ...facts }: AnswerFacts): Part[][] {
  if (facts.noData.includes(commodity)) return [];
  const report = facts[commodity];
  const lacking = report.gaps
    .filter((gap) => !isFilledFirst(gap, report))
    .filter((gap) => gap.extraL > 0 && (gap.verdict === 'short' || gap.verdict === 'into-reserve'))
    .sort((a, b) => b.extraL - a.extraL);
  if (lacking.length === 0) return [];
  const named = lacking.slice(0, NAMED_STRETCHES);
  const more = lacking.length - named.length;
  const what = commodityWord(commodity, rig.fuel.kind);
  return report.takesCans
    ? [
        words().carry(
          what,
          named.map((gap, index) => cansOn(report, { gap, saysSize: index === 0 })),
          more,
        ),
      ]
    : [words().inNoCan(what, named.map(missingOn), more)];
}

/** The cans for a stretch, and from where to where; their size with the first. */
function cansOn(report: Report, { gap, saysSize }: { gap: Gap; saysSize: boolean }): Part[] {
  const cans = gap.extraCans;
  return words().cans(
    { cans, toGet: cans - report.cansOwned, canL: saysSize ? report.canL : null },
    { from: namedEdge(filledAt(report, gap)), to: namedEdge(gap.to) },
  );
}

/** Where cans for a stretch can be filled: where it begins, or behind, where that supply has not so much. */
function filledAt({ gaps, canL }: Report, gap: Gap): Gap['from'] {
  const upTo = gaps.slice(0, gaps.indexOf(gap) + 1);
  const last = upTo.findLastIndex(({ from, departL }, index) => {
    const cameL = Math.max(0, upTo[index - 1]?.arriveL ?? 0);
    return (from.mostL ?? Number.POSITIVE_INFINITY) - (departL - cameL) >= gap.extraCans * canL;
  });
  return (upTo[last] ?? gap).from;
}

/** What is missing on a stretch of what no can takes. */
const missingOn = ({ extraL, from, to }: Gap): Part[] =>
  words().missing(extraL, { from: namedEdge(from), to: namedEdge(to) });

/** One sentence for a commodity: where nobody knows, save what only the way past the end leaves open. */
function askOf(commodity: Commodity, { rig, ...facts }: AnswerFacts): Part[][] {
  const what = commodityWord(commodity, rig.fuel.kind);
  if (facts.noData.includes(commodity)) return [words().getData(what)];
  const [first, ...rest] = facts[commodity].gaps.filter(
    (gap) => gap.verdict === 'unknown' && (gap.acrossNoData || gap.to.kind !== 'end' || facts.onwardTold),
  );
  if (first === undefined) return [];
  return [words().findOut(what, { fromM: first.from.atM, toM: first.to.atM }, rest.length)];
}
