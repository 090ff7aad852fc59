import type { Gap } from '../../../contract/analysis.ts';
import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { PRINTED } from '../../../words/printed.ts';
import { kmBefore, kmText, needed } from '../../export/rounding.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { plain } from '../../text/lines/plain.ts';
import { sentenceText } from '../../text/lines/sentence-text.ts';
import { places } from '../../text/plan/sheet-text.ts';
import type { Block } from '../model/model.ts';
import { edgeText, nameText } from './places.ts';
import { worstFirst } from './stretches.ts';

const WORDS = PRINTED.paper.answer;

/** Named in the box before the rest is counted (ours): it is read standing. */
const NAMED_STOPS = 6;
const NAMED_CARRIES = 4;
const NAMED_TURN_BACKS = 4;

/** The answer from a distance, what each commodity comes to, what to do, and without a plan what would help. */
export function answerBlocks(planned: PlannedTrip): Block[] {
  return [
    { kind: 'headline', lines: headlines(planned) },
    { kind: 'lines', lines: COMMODITIES.map((commodity) => commodityLine(planned, commodity)) },
    { kind: 'box', label: WORDS.box, lines: todoLines(planned) },
  ];
}

/** Calm only over a plan of which every leg is known to hold, on a route that is open and known. */
function headlines({ analysis, plan }: PlannedTrip): string[] {
  const closed = analysis.cautions
    .filter(({ code }) => code === 'route-closed')
    .map(({ fromKm = 0, toKm = fromKm }) => WORDS.closed(kmBefore(fromKm), kmText(toKm)));
  return [...closed, planHeadline({ analysis, plan })];
}

function planHeadline({ analysis, plan }: Pick<PlannedTrip, 'analysis' | 'plan'>): string {
  if (plan.status === 'none') return WORDS.noPlan;
  if (plan.status === 'out-of-time') return WORDS.outOfTime;
  if (hasOpenLeg(plan)) return WORDS.notAllKnown;
  const [unmapped] = analysis.noData;
  return unmapped === undefined ? WORDS.holds : WORDS.unmapped(unmapped);
}

/** Whether the plan has a leg that is not known to hold. */
export const hasOpenLeg = ({ legs }: Pick<PlannedTrip['plan'], 'legs'>): boolean =>
  COMMODITIES.some((commodity) => legs[commodity].some(({ verdict }) => verdict !== 'enough'));

function commodityLine({ analysis, plan }: PlannedTrip, commodity: Commodity): string {
  const report = analysis[commodity];
  if (analysis.noData.includes(commodity)) return WORDS.noData(commodity);
  const found = plan.status === 'found';
  const open = found ? plan.legs[commodity].find(({ verdict }) => verdict !== 'enough') : undefined;
  if (open !== undefined) return WORDS.openLeg(commodity, edgeText(open.from), edgeText(open.to));
  const [worst] = worstFirst(report.gaps);
  if (worst === undefined) return WORDS.noData(commodity);
  if (worst.doubt?.of === 'onward' && worst.doubt.leavesUnknown && worst.verdict === 'unknown')
    return WORDS.pastTheEnd(commodity);
  if (worst.verdict === 'enough') {
    const legs = found ? plan.legs[commodity] : report.gaps;
    const lengths = legs.map(({ from, to }) => to.atKm - from.atKm);
    return WORDS.enough(commodity, kmText(Math.max(...lengths)));
  }
  const outcome = outcomeOf(commodity, worst);
  if (found) return WORDS.without(outcome);
  return WORDS.asItIs(outcome, worst.extraL > 0 ? needed(worst.extraL) : null);
}

function outcomeOf(commodity: Commodity, gap: Gap): string {
  const km = (at: number | null) => (at === null ? null : kmBefore(at));
  switch (gap.verdict) {
    case 'short':
      return WORDS.dry(commodity, km(gap.runsDryKm));
    case 'into-reserve':
      return WORDS.intoReserve(commodity, km(gap.reserveFromKm));
    case 'unknown':
    case 'enough':
      return WORDS.unknown(commodity, edgeText(gap.from), edgeText(gap.to));
  }
}

function todoLines(planned: PlannedTrip): string[] {
  const { analysis, plan } = planned;
  if (plan.status !== 'found') return [...analysis.answer.todo.map(sentenceText), ...callLine(planned)];
  const get = COMMODITIES.map((commodity) => ({ commodity, count: plan.getCans[commodity] })).filter(
    ({ count }) => count > 0,
  );
  return [
    ...(hasOpenLeg(plan) ? [WORDS.partlyUnknown] : []),
    ...analysis.noData.map(WORDS.getData),
    ...(get.length === 0 ? [] : [WORDS.get(get)]),
    ...COMMODITIES.filter((each) => !analysis.noData.includes(each)).map((each) => fillLine(planned, each)),
    ...carryLines(planned),
    ...turnBackLines(planned),
    ...callLine(planned),
  ];
}

function fillLine({ plan }: PlannedTrip, commodity: Commodity): string {
  const stops = plan.sheet.flatMap((halt) => {
    const supply = halt[commodity];
    return halt.kind === 'stop' && supply !== null
      ? [
          WORDS.named(
            nameText(supply.at.name ?? supply.kind ?? PRINTED.lines.unnamedPlaces.passing),
            kmText(supply.at.atKm),
          ),
        ]
      : [];
  });
  const more = stops.length - NAMED_STOPS;
  return WORDS.fill(commodity, [
    ...stops.slice(0, NAMED_STOPS),
    ...(more > 0 ? [WORDS.moreStops(more)] : []),
  ]);
}

function carryLines({ plan: { carries } }: PlannedTrip): string[] {
  const lines = carries.slice(0, NAMED_CARRIES).map(({ cans, commodity, from, to, pourAtKm }) => {
    const what = WORDS.carry(cans, { commodity, from: edgeText(from), to: edgeText(to) });
    if (pourAtKm.length === 0) return `${what}${WORDS.pourNone}`;
    const left = cans - pourAtKm.length;
    return `${what}${WORDS.pour(places(pourAtKm, kmText))}${left > 0 ? WORDS.stillFull(left) : ''}`;
  });
  const more = carries.length - NAMED_CARRIES;
  return more > 0 ? [...lines, WORDS.moreCarries(more)] : lines;
}

/** Only those that come first of fuel and water, and before what they lead on to. */
function turnBackLines({ whatIf: { turnBacks } }: PlannedTrip): string[] {
  const first = turnBacks.filter(({ first: isFirst, atKm, towards }) => isFirst && atKm < towards.atKm);
  const lines = first
    .slice(0, NAMED_TURN_BACKS)
    .map(({ atKm, commodity, backTo }) => WORDS.turnBack(kmBefore(atKm), commodity, edgeText(backTo)));
  const more = first.length - NAMED_TURN_BACKS;
  return more > 0 ? [...lines, WORDS.moreTurnBacks(more)] : lines;
}

function callLine({ whatIf: { callFirst } }: PlannedTrip): string[] {
  const first = callFirst.find(({ verdict }) => verdict !== 'enough');
  if (first === undefined) return [];
  const place = WORDS.named(nameText(first.name ?? first.kind), kmText(first.atKm));
  return [first.isOwn ? WORDS.see(place) : WORDS.telephone(place)];
}

/** Ways out that are named (ours): the first are the best. */
const NAMED_WAYS = 6;

/** Without a plan: what breaks it, and what would help. Nothing where there is a plan. */
export function waysOutBlocks({ plan }: PlannedTrip): Block[] {
  if (plan.status === 'found') return [];
  const ways = plan.waysOut.slice(0, NAMED_WAYS).map(({ text }) => plain(text));
  const rest = plan.waysOut.length - ways.length;
  const standing = plan.waysOutComplete ? WORDS.noWayOut : WORDS.notAllTried;
  return [
    ...(plan.breaks.length === 0
      ? []
      : [{ kind: 'box' as const, label: WORDS.breaks, lines: plan.breaks.map(({ text }) => plain(text)) }]),
    {
      kind: 'box',
      label: WORDS.waysOut,
      lines: [
        ...ways,
        ...(rest > 0 ? [PRINTED.paper.page.more(rest)] : []),
        ...(ways.length === 0 || !plan.waysOutComplete ? [standing] : []),
      ],
    },
  ];
}
