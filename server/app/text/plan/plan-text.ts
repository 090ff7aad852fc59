import type { Analysis } from '../../../contract/analysis.ts';
import type { Plan, PlanCarry, PlanLeg } from '../../../contract/plan.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { PRINTED } from '../../../words/printed.ts';
import { extractLines } from '../extracts-text.ts';
import { figure, km, litres } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { sentenceText } from '../lines/sentence-text.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';
import { planSupplyLines } from '../supplies-text.ts';
import { placeText } from './place-text.ts';
import { places, sheetLines } from './sheet-text.ts';

const WORDS = PRINTED.plan;
const LINES = PRINTED.lines;
const HEADS = WORDS.legColumns;

const LEG_COLUMNS: readonly Column[] = [
  left(HEADS.from),
  left(HEADS.to),
  right(HEADS.at),
  right(HEADS.cans),
  right(HEADS.leaveWith),
  right(HEADS.need),
  right(HEADS.reserve),
  right(HEADS.margin),
  right(HEADS.turnBack),
];

/** What of the masses is not known stands first: a plan within the limits says less than it seems to. */
const PARTLY_KNOWN: readonly string[] = ['mass-incomplete', 'mass-limit-unknown'] as const;

/** A carry plan as text for people; `more`: further sections, each begun with an empty line. */
export function planText(
  analysis: Analysis,
  plan: Plan,
  routeName: string,
  more: readonly string[] = [],
): string {
  const { route } = analysis;
  const lines = [
    WORDS.head(plain(route.name === '' ? routeName : route.name), km(route.lengthKm)),
    ...extractLines(analysis.extracts),
    ...analysis.noData.map((commodity) => analysis.answer[commodity].map(sentenceText).join(' ')),
    ...plan.restsOn.flatMap(({ code, text }) => (PARTLY_KNOWN.includes(code) ? [plain(text)] : [])),
    '',
  ];
  if (plan.status === 'out-of-time') lines.push(WORDS.outOfTime);
  else if (plan.status === 'none') lines.push(...noneLines(plan));
  else lines.push(...foundLines(plan));
  if (plan.restsOn.length > 0) {
    lines.push('', WORDS.restsOn);
    for (const { text, fromKm, toKm } of plan.restsOn) lines.push(`- ${placed(fromKm, toKm)}${plain(text)}`);
  }
  const supplies = planSupplyLines(analysis, plan);
  if (supplies.length > 0) lines.push('', ...supplies);
  lines.push(...more, '', WORDS.cautions);
  for (const { text } of analysis.standing) lines.push(`- ${plain(text)}`);
  return `${lines.join('\n')}\n`;
}

const placed = (fromKm: number | undefined, toKm: number | undefined): string => {
  if (fromKm === undefined || toKm === undefined) return '';
  return fromKm === toKm ? WORDS.spot(figure(fromKm)) : WORDS.stretch(figure(fromKm), figure(toKm));
};

function foundLines(plan: Plan): string[] {
  const lines: string[] = [];
  const toGet = COMMODITIES.filter((commodity) => plan.getCans[commodity] > 0).map((commodity) => {
    return WORDS.cansOf(plan.getCans[commodity], LINES.commodity(commodity));
  });
  if (toGet.length > 0) lines.push(WORDS.toGet(toGet));
  if (COMMODITIES.some((commodity) => plan.legs[commodity].some(({ verdict }) => verdict === 'unknown')))
    lines.push(WORDS.partlyUnknown);
  lines.push(WORDS.sheet, ...sheetLines(plan.sheet, plan.totals), '');
  for (const commodity of COMMODITIES) {
    const legs = plan.legs[commodity];
    const [first, ...rest] = legs;
    if (first === undefined) {
      lines.push(WORDS.notPlanned(WORDS.subjects[commodity]));
      continue;
    }
    const stops = rest.map(({ from }) => placeText(from));
    const subject = WORDS.subjects[commodity];
    lines.push(stops.length === 0 ? WORDS.noStop(subject) : WORDS.fillAt(subject, stops));
    lines.push(WORDS.atStart(litres(first.tankL), withCans(first)));
    for (const carry of plan.carries) if (carry.commodity === commodity) lines.push(`  ${carryText(carry)}`);
  }
  for (const commodity of COMMODITIES) {
    if (plan.legs[commodity].length > 0)
      lines.push(
        '',
        WORDS.legs(LINES.commodity(commodity)),
        ...tableText(LEG_COLUMNS, plan.legs[commodity].map(legCells)),
      );
  }
  lines.push('', WORDS.aims);
  for (const aim of plan.aims) {
    if (aim.aim === 'short-fill-l' && aim.value === 0 && aim.proven) continue;
    const proven = aim.proven ? WORDS.noneBetter : WORDS.notProven(figure(aim.gap));
    lines.push(`- ${WORDS.aim[aim.aim](figure(aim.value), aim.value)} (${proven})`);
  }
  lines.push(...failureLines(plan));
  if (plan.waysOut.length > 0 || !plan.waysOutComplete)
    lines.push('', WORDS.waysOutBeside, ...wayLines(plan));
  return lines;
}

function failureLines({ oneFailure }: Plan): string[] {
  if (oneFailure === null) return [];
  const head = WORDS.safe(oneFailure.spendsReserve);
  if (oneFailure.status === 'out-of-time') return ['', head, WORDS.safeOutOfTime];
  if (oneFailure.status === 'none') {
    return ['', head, WORDS.safeNone, ...oneFailure.breaks.map(({ text }) => `- ${plain(text)}`)];
  }
  const { moreCans, moreKg, moreDrivingKm, failures, proven, sheet, totals } = oneFailure;
  const lines = ['', head];
  const difference = (value: number) => ({ figure: figure(Math.abs(value)), isLess: value < 0 });
  lines.push(WORDS.safeMore(moreCans, { mass: difference(moreKg), way: difference(moreDrivingKm), proven }));
  lines.push('', WORDS.safeSheet, ...sheetLines(sheet, totals), '', WORDS.whenStopFails);
  for (const { commodity, at, next, to, arriveL } of failures) {
    lines.push(
      WORDS.failure(placeText(at), {
        commodity: LINES.commodity(commodity),
        isOn: next === 'on',
        to: placeText(to),
        litres: litres(arriveL),
      }),
    );
  }
  lines.push(...oneFailure.nights.map(({ text }) => `- ${plain(text)}`));
  return lines;
}

const withCans = ({ cans }: PlanLeg): string => (cans === 0 ? '' : WORDS.andFullCans(cans));

function carryText({ commodity, cans, litres: held, from, to, pourAtKm }: PlanCarry): string {
  const what = WORDS.fullCansOf(LINES.cans(cans), LINES.commodity(commodity), litres(held));
  const poured = pourAtKm.length;
  const pours = poured === 0 ? WORDS.noPour : WORDS.pours(poured, { of: cans, at: places(pourAtKm) });
  return WORDS.carry(what, { from: placeText(from), to: placeText(to), pours });
}

const legCells = (leg: PlanLeg): string[] => [
  placeText(leg.from),
  placeText(leg.to),
  figure(leg.to.atKm),
  String(leg.cans),
  figure(leg.departL),
  figure(leg.needL),
  figure(leg.reserveL),
  figure(leg.marginL),
  leg.turnBackKm === null ? '-' : figure(leg.turnBackKm),
];

function noneLines(plan: Plan): string[] {
  const lines: string[] = [WORDS.none];
  for (const { text } of plan.breaks) lines.push(`- ${plain(text)}`);
  lines.push('', WORDS.waysOut, ...wayLines(plan));
  if (plan.waysOut.length === 0) lines.push(WORDS.noWayOut);
  return lines;
}

function wayLines({ waysOut, waysOutComplete }: Plan): string[] {
  const lines = waysOut.map(({ text }) => `- ${plain(text)}`);
  return waysOutComplete ? lines : [...lines, WORDS.notAllTried];
}
