import type { Analysis } from '../../../contract/analysis.ts';
import type { Plan, PlanAim, PlanCarry, PlanEdge, PlanLeg } from '../../../contract/plan.ts';
import { extractLines } from '../extracts-text.ts';
import { figure, km, litres } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { sentenceText } from '../lines/sentence-text.ts';
import { type Column, left, right, tableText } from '../lines/table-text.ts';
import { planSupplyLines } from '../supplies-text.ts';
import { places, sheetLines } from './sheet-text.ts';

const COMMODITIES = ['fuel', 'water'] as const;

const LEG_COLUMNS: readonly Column[] = [
  left('from'),
  left('to'),
  right('at', 'km'),
  right('cans', 'full'),
  right('leave with', 'l'),
  right('need', 'l'),
  right('reserve', 'l'),
  right('margin', 'l'),
  right('turn back', 'km'),
];

const AIM_WORDS: Record<PlanAim['aim'], (value: number) => string> = {
  'doubtful-km': (value) => `hanging on doubtful supplies: ${km(value)}`,
  'implied-km': (value) => `hanging on implied supplies: ${km(value)}`,
  'stated-km': (value) => `hanging on supplies that only tags state: ${km(value)}`,
  'cans-to-get': (value) => `cans beyond those owned: ${value}`,
  'lost-h': (value) => `time lost on waiting, filling and detours: ${figure(value)} h`,
  'driving-km': (value) => `driving to supplies that do not lie beside the route: ${km(value)}`,
  'can-km': (value) => `full cans carried: ${figure(value)} can-km`,
  'least-margin-km': (value) => `least margin: the tightest leg bears ${km(value)} of detour more`,
  'short-fill-l': (value) => `left out of the tanks for a permitted mass: ${litres(value)}`,
};

/** What of the masses is not known stands first: a plan within the limits says less than it seems to. */
const PARTLY_KNOWN = ['mass-incomplete', 'mass-limit-unknown'];

/** A carry plan as text for people; `more`: further sections, each begun with an empty line. */
export function planText(
  analysis: Analysis,
  plan: Plan,
  routeName: string,
  more: readonly string[] = [],
): string {
  const { route } = analysis;
  const lines = [
    `Carry plan: ${plain(route.name === '' ? routeName : route.name)}, ${km(route.lengthKm)}`,
    ...extractLines(analysis.extracts),
    ...analysis.noData.map((commodity) => analysis.answer[commodity].map(sentenceText).join(' ')),
    ...plan.restsOn.flatMap(({ code, text }) => (PARTLY_KNOWN.includes(code) ? [plain(text)] : [])),
    '',
  ];
  if (plan.status === 'out-of-time')
    lines.push('No plan was found in the time there was; whether there is one is not known.');
  else if (plan.status === 'none') lines.push(...noneLines(plan));
  else lines.push(...foundLines(plan));
  if (plan.restsOn.length > 0) {
    lines.push('', 'Rests on');
    for (const { text, fromKm, toKm } of plan.restsOn) lines.push(`- ${placed(fromKm, toKm)}${plain(text)}`);
  }
  const supplies = planSupplyLines(analysis, plan);
  if (supplies.length > 0) lines.push('', ...supplies);
  lines.push(...more, '', 'Cautions');
  for (const { text } of analysis.standing) lines.push(`- ${plain(text)}`);
  return `${lines.join('\n')}\n`;
}

const placed = (fromKm: number | undefined, toKm: number | undefined): string => {
  if (fromKm === undefined || toKm === undefined) return '';
  return fromKm === toKm ? `km ${figure(fromKm)}: ` : `km ${figure(fromKm)} to ${figure(toKm)}: `;
};

function foundLines(plan: Plan): string[] {
  const lines: string[] = [];
  const toGet = COMMODITIES.filter((commodity) => plan.getCans[commodity] > 0).map((commodity) => {
    const count = plan.getCans[commodity];
    return `${count} ${commodity} ${count === 1 ? 'can' : 'cans'}`;
  });
  if (toGet.length > 0) lines.push(`To get before leaving: ${toGet.join(' and ')} more than are owned.`);
  if (COMMODITIES.some((commodity) => plan.legs[commodity].some(({ verdict }) => verdict === 'unknown')))
    lines.push('The reserve is kept as far as is known: read what the plan rests on.');
  lines.push('Sheet', ...sheetLines(plan.sheet, plan.totals), '');
  for (const commodity of COMMODITIES) {
    const legs = plan.legs[commodity];
    const [first, ...rest] = legs;
    if (first === undefined) {
      lines.push(`${commodity === 'fuel' ? 'Fuel' : 'Water'} is not planned.`);
      continue;
    }
    const stops = rest.map(({ from }) => place(from));
    lines.push(
      `${commodity === 'fuel' ? 'Fuel' : 'Water'}: ${stops.length === 0 ? 'no stop is needed' : `fill at ${stops.join(', ')}`}.`,
    );
    if (first !== undefined)
      lines.push(`  At the start ${litres(first.tankL)} in the tanks${withCans(first)}.`);
    for (const carry of plan.carries) if (carry.commodity === commodity) lines.push(`  ${carryText(carry)}`);
  }
  for (const commodity of COMMODITIES) {
    if (plan.legs[commodity].length > 0)
      lines.push('', `Legs, ${commodity}`, ...tableText(LEG_COLUMNS, plan.legs[commodity].map(legCells)));
  }
  lines.push('', 'Aims, the first before the next');
  for (const aim of plan.aims) {
    if (aim.aim === 'short-fill-l' && aim.value === 0 && aim.proven) continue;
    const proven = aim.proven
      ? 'none better exists'
      : `not proven: up to ${figure(aim.gap)} better may exist`;
    lines.push(`- ${AIM_WORDS[aim.aim](aim.value)} (${proven})`);
  }
  lines.push(...failureLines(plan));
  if (plan.waysOut.length > 0 || !plan.waysOutComplete)
    lines.push('', 'Or without more cans, each computed again', ...wayLines(plan));
  return lines;
}

/** "6 more fuel cans", "1 fewer water can". */
const moreWords = (count: number, commodity: string): string =>
  `${count === 0 ? 'no' : Math.abs(count)} ${count < 0 ? 'fewer' : 'more'} ${commodity} ${Math.abs(count) === 1 ? 'can' : 'cans'}`;

function failureLines({ oneFailure }: Plan): string[] {
  if (oneFailure === null) return [];
  const reserve = oneFailure.spendsReserve ? 'the reserve may be spent' : 'the reserve kept';
  const head = `Safe against the failure of any one stop (${reserve})`;
  if (oneFailure.status === 'out-of-time') return ['', head, '- not found in the time there was'];
  if (oneFailure.status === 'none') {
    const none = '- no such plan, not with the cans there may be and not with 6 more of each';
    return ['', head, none, ...oneFailure.breaks.map(({ text }) => `- ${plain(text)}`)];
  }
  const { moreCans, moreKg, moreDrivingKm, failures, proven, sheet, totals } = oneFailure;
  const lines = ['', head];
  lines.push(
    `- ${moreWords(moreCans.fuel, 'fuel')} and ${moreWords(moreCans.water, 'water')} than the plan above, ${figure(Math.abs(moreKg))} kg ${moreKg < 0 ? 'less' : 'more'} when full, ${km(Math.abs(moreDrivingKm))} ${moreDrivingKm < 0 ? 'less' : 'more'} off the route${proven ? '' : ' (not proven to be the least)'}`,
  );
  lines.push(
    '',
    'Sheet of the safe plan',
    ...sheetLines(sheet, totals),
    '',
    'What is done when a stop fails',
  );
  for (const { commodity, at, next, to, arriveL } of failures) {
    lines.push(
      `- no ${commodity} at ${place(at)}: ${next === 'on' ? 'on' : 'back'} to ${place(to)}, there with ${litres(arriveL)}`,
    );
  }
  lines.push(...oneFailure.nights.map(({ text }) => `- ${plain(text)}`));
  return lines;
}

const withCans = ({ cans }: PlanLeg): string =>
  cans === 0 ? '' : ` and ${cans} full ${cans === 1 ? 'can' : 'cans'}`;

const place = ({ kind, name, atKm }: PlanEdge): string =>
  `${plain(name ?? (kind === 'passing' ? 'a supply' : `the ${kind}`))} (km ${figure(atKm)})`;

function carryText({ commodity, cans, litres: held, from, to, pourAtKm }: PlanCarry): string {
  const what = `${cans} ${cans === 1 ? 'can' : 'cans'} of ${commodity} (${litres(held)})`;
  const left = cans - pourAtKm.length;
  const them = left > 0 ? `${pourAtKm.length} of them` : cans === 1 ? 'it' : 'them';
  const pours =
    pourAtKm.length === 0
      ? 'none is poured before'
      : `pour ${them} in at km ${places(pourAtKm)}${left > 0 ? `; ${left} still full on arrival` : ''}`;
  return `${what} full from ${place(from)} towards ${place(to)}; ${pours}.`;
}

const legCells = (leg: PlanLeg): string[] => [
  place(leg.from),
  place(leg.to),
  figure(leg.to.atKm),
  String(leg.cans),
  figure(leg.departL),
  figure(leg.needL),
  figure(leg.reserveL),
  figure(leg.marginL),
  leg.turnBackKm === null ? '-' : figure(leg.turnBackKm),
];

function noneLines(plan: Plan): string[] {
  const lines = ['There is no plan that keeps the reserve.'];
  for (const { text } of plan.breaks) lines.push(`- ${plain(text)}`);
  lines.push('', 'Ways out, each computed again', ...wayLines(plan));
  if (plan.waysOut.length === 0) lines.push('- none was found');
  return lines;
}

function wayLines({ waysOut, waysOutComplete }: Plan): string[] {
  const lines = waysOut.map(({ text }) => `- ${plain(text)}`);
  return waysOutComplete ? lines : [...lines, '- not all were tried: the time ran out'];
}
