import type { Commodity } from '../../contract/common.ts';
import type { Gap, Report } from '../../core/gaps/gap.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { figure, placeAt, rounded, upToTenth } from '../parts/figures.ts';
import { joined, type Part, parts } from '../parts/part.ts';
import type { AnswerFacts } from './answer-facts.ts';
import { commodityWord, edgeName } from './names.ts';

/** At most this many stretches are named for each commodity in what to do; the rest are counted. */
const NAMED_STRETCHES = 2;

/** What to do: what to carry, what to find out, and to leave with everything full. */
export function todoOf(facts: AnswerFacts): Part[][] {
  const carries = COMMODITIES.flatMap((commodity) => [
    ...fillOf(commodity, facts),
    ...carryOf(commodity, facts),
  ]);
  const asks = COMMODITIES.flatMap((commodity) => askOf(commodity, facts));
  if (!facts.onwardTold) {
    asks.push(parts`Say how far it is from the end of the route to the next supply.`);
  }
  const holds = carries.length + asks.length === 0 ? ': every stretch holds with the reserve' : '';
  return [
    ...facts.cautions.flatMap(closedOf),
    ...carries,
    ...asks,
    parts`Leave with everything full${holds}. Confirm each supply before you leave.`,
  ];
}

const CLOSED = { text: 'closed', strong: true } as const;

/** That the route is closed somewhere goes before all else. */
const closedOf = ({ code, fromM = 0, toM = fromM }: AnswerFacts['cautions'][number]): Part[][] =>
  code === 'route-closed'
    ? [
        parts`Find another way or another time: you noted the route as ${CLOSED} from ${placeAt(fromM)} to ${placeAt(toM)}.`,
      ]
    : [];

/** Whether what a gap lacks has room in the fixed tanks, since the trip starts with less. */
const isFilledFirst = ({ from, extraL, departL }: Gap, { capacityL }: Report): boolean =>
  from.kind === 'start' && extraL > 0 && extraL <= capacityL - departL;

const FILL = { text: 'fill', strong: true } as const;

/** One sentence for a commodity that the trip starts with too little of: what to fill before leaving. */
function fillOf(commodity: Commodity, { rig, ...facts }: AnswerFacts): Part[][] {
  if (facts.noData.includes(commodity)) return [];
  const report = facts[commodity];
  const first = report.gaps.find((gap) => isFilledFirst(gap, report));
  if (first === undefined) return [];
  const what = capital(commodityWord(commodity, rig.fuel.kind));
  return [parts`${what}: ${FILL} at least ${rounded(upToTenth(first.extraL), 'l')} more before leaving.`];
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
  const rest = lacking.length - NAMED_STRETCHES;
  const close = rest > 0 ? `, and on ${stretchCount(rest)} (see the gaps).` : '.';
  const what = capital(commodityWord(commodity, rig.fuel.kind));
  if (!report.takesCans)
    return [
      parts`${what}: ${joined(lacking.slice(0, NAMED_STRETCHES).map(missingOn), ', ')}${close} It goes in no can: find another supply, or another way.`,
    ];
  const stretches = lacking.slice(0, NAMED_STRETCHES).map((gap, index): Part[] => {
    const cans = { text: `${gap.extraCans} ${gap.extraCans === 1 ? 'can' : 'cans'}`, strong: true } as const;
    const size = index === 0 ? parts` of ${figure(report.canL, 'l')}` : [];
    const toGet = gap.extraCans - report.cansOwned;
    const more = toGet > 0 ? `), ${toGet} more than you own` : ')';
    const from = filledAt(report, gap);
    return parts`${cans}${size} from ${edgeName(from)} (${placeAt(from.atM)}) to ${edgeName(gap.to)} (${placeAt(gap.to.atM)}${more}`;
  });
  return [parts`${what}: ${joined(stretches, ', ')}${close}`];
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
  parts`${rounded(extraL, 'l')} are missing from ${edgeName(from)} (${placeAt(from.atM)}) to ${edgeName(to)} (${placeAt(to.atM)})`;

/** One sentence for a commodity: where nobody knows, save what only the way past the end leaves open. */
function askOf(commodity: Commodity, { rig, ...facts }: AnswerFacts): Part[][] {
  if (facts.noData.includes(commodity)) {
    const what = commodityWord(commodity, rig.fuel.kind);
    return [
      parts`Get map data that tells of ${what}: an extract of the whole region (.osm.pbf), not one cut down to something else; or mark what you know of as waypoints of the route.`,
    ];
  }
  const [first, ...rest] = facts[commodity].gaps.filter(
    (gap) => gap.verdict === 'unknown' && (gap.acrossNoData || gap.to.kind !== 'end' || facts.onwardTold),
  );
  if (first === undefined) return [];
  const close = rest.length > 0 ? `, and on ${stretchCount(rest.length)}.` : '.';
  const what = commodityWord(commodity, rig.fuel.kind);
  return [
    parts`Find out where there is ${what} between ${placeAt(first.from.atM)} and ${placeAt(first.to.atM)}${close}`,
  ];
}

const stretchCount = (count: number): string => `${count} more ${count === 1 ? 'stretch' : 'stretches'}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
