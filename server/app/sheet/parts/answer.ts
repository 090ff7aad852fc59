import type { Gap } from '../../../contract/analysis.ts';
import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import {
  atPlace,
  kmText,
  lengthText,
  neededText,
  placeBefore,
  placeText,
} from '../../text/lines/rounding.ts';
import { saidText } from '../../text/lines/said-text.ts';
import { sentenceText } from '../../text/lines/sentence-text.ts';
import { places } from '../../text/plan/sheet-text.ts';
import type { Block } from '../model/model.ts';
import { edgeText, nameText } from './places.ts';
import { worstFirst } from './stretches.ts';

const words = () => printed().paper.answer;

/** Named in the box before the rest is counted (ours): it is read standing. */
const NAMED_STOPS = 6;
const NAMED_CARRIES = 4;
const NAMED_TURN_BACKS = 4;

/** The answer from a distance, what each commodity comes to, what to do, and without a plan what would help. */
export function answerBlocks(planned: PlannedTrip): Block[] {
  return [
    { kind: 'headline', lines: headlines(planned) },
    { kind: 'lines', lines: COMMODITIES.map((commodity) => commodityLine(planned, commodity)) },
    { kind: 'box', label: words().box, lines: todoLines(planned) },
  ];
}

/** Calm only over a plan of which every leg is known to hold, on a route that is open and known. */
function headlines({ analysis, plan }: PlannedTrip): string[] {
  const closed = analysis.cautions
    .filter(({ code }) => code === 'route-closed')
    .map(({ fromKm = 0, toKm = fromKm }) => words().closed(placeBefore(fromKm), placeText(toKm)));
  return [...closed, planHeadline({ analysis, plan })];
}

function planHeadline({ analysis, plan }: Pick<PlannedTrip, 'analysis' | 'plan'>): string {
  if (plan.status === 'none') return words().noPlan;
  if (plan.status === 'out-of-time') return words().outOfTime;
  if (hasOpenLeg(plan)) return words().notAllKnown;
  const [unmapped] = analysis.noData;
  return unmapped === undefined ? words().holds : words().unmapped(unmapped);
}

/** Whether the plan has a leg that is not known to hold. */
export const hasOpenLeg = ({ legs }: Pick<PlannedTrip['plan'], 'legs'>): boolean =>
  COMMODITIES.some((commodity) => legs[commodity].some(({ verdict }) => verdict !== 'enough'));

function commodityLine({ analysis, plan }: PlannedTrip, commodity: Commodity): string {
  const report = analysis[commodity];
  if (analysis.noData.includes(commodity)) return words().noData(commodity);
  const found = plan.status === 'found';
  const open = found ? plan.legs[commodity].find(({ verdict }) => verdict !== 'enough') : undefined;
  if (open !== undefined) return words().openLeg(commodity, edgeText(open.from), edgeText(open.to));
  const [worst] = worstFirst(report.gaps);
  if (worst === undefined) return words().noData(commodity);
  if (worst.doubt?.of === 'onward' && worst.doubt.leavesUnknown && worst.verdict === 'unknown')
    return words().pastTheEnd(commodity);
  if (worst.verdict === 'enough') {
    const legs = found ? plan.legs[commodity] : report.gaps;
    const lengths = legs.map(({ from, to }) => to.atKm - from.atKm);
    return words().enough(commodity, lengthText(Math.max(...lengths)));
  }
  const outcome = outcomeOf(commodity, worst);
  if (found) return words().without(outcome);
  return words().asItIs(outcome, worst.extraL > 0 ? neededText(worst.extraL) : null);
}

function outcomeOf(commodity: Commodity, gap: Gap): string {
  const km = (at: number | null) => (at === null ? null : placeBefore(at));
  switch (gap.verdict) {
    case 'short':
      return words().dry(commodity, km(gap.runsDryKm));
    case 'into-reserve':
      return words().intoReserve(commodity, km(gap.reserveFromKm));
    case 'unknown':
    case 'enough':
      return words().unknown(commodity, edgeText(gap.from), edgeText(gap.to));
  }
}

function todoLines(planned: PlannedTrip): string[] {
  const { analysis, plan } = planned;
  if (plan.status !== 'found') return [...analysis.answer.todo.map(sentenceText), ...callLine(planned)];
  const get = COMMODITIES.map((commodity) => ({ commodity, count: plan.getCans[commodity] })).filter(
    ({ count }) => count > 0,
  );
  return [
    ...(hasOpenLeg(plan) ? [words().partlyUnknown] : []),
    ...analysis.noData.map(words().getData),
    ...(get.length === 0 ? [] : [words().get(get)]),
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
          words().named(
            nameText(supply.at.name ?? supply.kind ?? printed().lines.unnamedPlaces.passing),
            placeText(supply.at.atKm),
          ),
        ]
      : [];
  });
  const more = stops.length - NAMED_STOPS;
  return words().fill(commodity, [
    ...stops.slice(0, NAMED_STOPS),
    ...(more > 0 ? [words().moreStops(more)] : []),
  ]);
}

function carryLines({ plan: { carries } }: PlannedTrip): string[] {
  const lines = carries.slice(0, NAMED_CARRIES).map(({ cans, commodity, from, to, pourAtKm }) => {
    const what = words().carry(cans, { commodity, from: edgeText(from), to: edgeText(to) });
    if (pourAtKm.length === 0) return `${what}${words().pourNone}`;
    const left = cans - pourAtKm.length;
    return `${what}${words().pour(atPlace(places(pourAtKm, kmText)))}${left > 0 ? words().stillFull(left) : ''}`;
  });
  const more = carries.length - NAMED_CARRIES;
  return more > 0 ? [...lines, words().moreCarries(more)] : lines;
}

/** Only those that come first of fuel and water, and before what they lead on to. */
function turnBackLines({ whatIf: { turnBacks } }: PlannedTrip): string[] {
  const first = turnBacks.filter(({ first: isFirst, atKm, towards }) => isFirst && atKm < towards.atKm);
  const lines = first
    .slice(0, NAMED_TURN_BACKS)
    .map(({ atKm, commodity, backTo }) => words().turnBack(placeBefore(atKm), commodity, edgeText(backTo)));
  const more = first.length - NAMED_TURN_BACKS;
  return more > 0 ? [...lines, words().moreTurnBacks(more)] : lines;
}

function callLine({ whatIf: { callFirst } }: PlannedTrip): string[] {
  const first = callFirst.find(({ verdict }) => verdict !== 'enough');
  if (first === undefined) return [];
  const place = words().named(nameText(first.name ?? first.kind), placeText(first.atKm));
  return [first.isOwn ? words().see(place) : words().telephone(place)];
}

/** Ways out that are named (ours): the first are the best. */
const NAMED_WAYS = 6;

/** Without a plan: what breaks it, and what would help. Nothing where there is a plan. */
export function waysOutBlocks({ plan }: PlannedTrip): Block[] {
  if (plan.status === 'found') return [];
  const ways = plan.waysOut.slice(0, NAMED_WAYS).map(saidText);
  const rest = plan.waysOut.length - ways.length;
  const standing = plan.waysOutComplete ? words().noWayOut : words().notAllTried;
  return [
    ...(plan.breaks.length === 0
      ? []
      : [{ kind: 'box' as const, label: words().breaks, lines: plan.breaks.map(saidText) }]),
    {
      kind: 'box',
      label: words().waysOut,
      lines: [
        ...ways,
        ...(rest > 0 ? [printed().paper.page.more(rest)] : []),
        ...(ways.length === 0 || !plan.waysOutComplete ? [standing] : []),
      ],
    },
  ];
}
