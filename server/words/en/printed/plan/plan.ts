import type { PlanAim } from '../../../../contract/plan.ts';
import { column } from '../shared/columns.ts';
import { LINE_WORDS } from '../shared/lines.ts';

/** What each aim is told as: its figure with one decimal, and as it is where it counts. */
const AIMS: Record<PlanAim['aim'], (figure: string, count: number) => string> = {
  'doubtful-km': (figure) => `hanging on doubtful supplies: ${figure} km`,
  'implied-km': (figure) => `hanging on implied supplies: ${figure} km`,
  'stated-km': (figure) => `hanging on supplies that only tags state: ${figure} km`,
  'cans-to-get': (_, count) => `cans beyond those owned: ${count}`,
  'lost-h': (figure) => `time lost on waiting, filling and detours: ${figure} h`,
  'driving-km': (figure) => `driving to supplies that do not lie beside the route: ${figure} km`,
  'can-km': (figure) => `full cans carried: ${figure} can-km`,
  'least-margin-km': (figure) => `least margin: the tightest leg bears ${figure} km of detour more`,
  'short-fill-l': (figure) => `left out of the tanks for a permitted mass: ${figure} l`,
};

/** "6 more fuel cans", "1 fewer water can". */
const moreCans = (count: number, commodity: string): string =>
  `${count === 0 ? 'no' : Math.abs(count)} ${count < 0 ? 'fewer' : 'more'} ${commodity} ${Math.abs(count) === 1 ? 'can' : 'cans'}`;

/** A figure without its sign, and whether it is less than nothing. */
interface Difference {
  readonly figure: string;
  readonly isLess: boolean;
}

const moreOrLess = ({ isLess }: Difference): string => (isLess ? 'less' : 'more');

/** Words of a carry plan. Figures come in as they are set. */
export const PLAN_WORDS = {
  legColumns: {
    from: column('from'),
    to: column('to'),
    at: column('at', 'km'),
    cans: column('cans', 'full'),
    leaveWith: column('leave with', 'l'),
    need: column('need', 'l'),
    reserve: column('reserve', 'l'),
    margin: column('margin', 'l'),
    turnBack: column('turn back', 'km'),
  },
  head: (route: string, length: string) => `Carry plan: ${route}, ${length}`,
  outOfTime: 'No plan was found in the time there was; whether there is one is not known.',
  restsOn: 'Rests on',
  spot: (from: string) => `km ${from}: `,
  stretch: (from: string, to: string) => `km ${from} to ${to}: `,
  cautions: 'Cautions',
  cansOf: (count: number, commodity: string) => `${count} ${commodity} ${count === 1 ? 'can' : 'cans'}`,
  toGet: (cans: readonly string[]) => `To get before leaving: ${cans.join(' and ')} more than are owned.`,
  partlyUnknown: 'The reserve is kept as far as is known: read what the plan rests on.',
  sheet: 'Sheet',
  subjects: { fuel: 'Fuel', water: 'Water' },
  notPlanned: (subject: string) => `${subject} is not planned.`,
  noStop: (subject: string) => `${subject}: no stop is needed.`,
  fillAt: (subject: string, stops: readonly string[]) => `${subject}: fill at ${stops.join(', ')}.`,
  atStart: (litres: string, cans: string) => `  At the start ${litres} in the tanks${cans}.`,
  andFullCans: (count: number) => ` and ${count} full ${count === 1 ? 'can' : 'cans'}`,
  legs: (commodity: string) => `Legs, ${commodity}`,
  aims: 'Aims, the first before the next',
  aim: AIMS,
  noneBetter: 'none better exists',
  notProven: (gap: string) => `not proven: up to ${gap} better may exist`,
  waysOutBeside: 'Or without more cans, each computed again',
  safe: (spendsReserve: boolean) =>
    `Safe against the failure of any one stop (${spendsReserve ? 'the reserve may be spent' : 'the reserve kept'})`,
  safeOutOfTime: '- not found in the time there was',
  safeNone: '- no such plan, not with the cans there may be and not with 6 more of each',
  safeMore: (
    cans: Readonly<Record<'fuel' | 'water', number>>,
    { mass, way, proven }: { mass: Difference; way: Difference; proven: boolean },
  ) =>
    `- ${moreCans(cans.fuel, 'fuel')} and ${moreCans(cans.water, 'water')} than the plan above, ${mass.figure} kg ${moreOrLess(mass)} when full, ${way.figure} km ${moreOrLess(way)} off the route${proven ? '' : ' (not proven to be the least)'}`,
  safeSheet: 'Sheet of the safe plan',
  whenStopFails: 'What is done when a stop fails',
  failure: (
    at: string,
    { commodity, isOn, to, litres }: { commodity: string; isOn: boolean; to: string; litres: string },
  ) => `- no ${commodity} at ${at}: ${isOn ? 'on' : 'back'} to ${to}, there with ${litres}`,
  fullCansOf: (cans: string, commodity: string, litres: string) => `${cans} of ${commodity} (${litres})`,
  carry: (what: string, { from, to, pours }: { from: string; to: string; pours: string }) =>
    `${what} full from ${from} towards ${to}; ${pours}.`,
  noPour: 'none is poured before',
  pours: (poured: number, { of, at }: { of: number; at: string }) => {
    const left = of - poured;
    const them = left > 0 ? `${poured} of them` : of === 1 ? 'it' : 'them';
    return `pour ${them} in at km ${at}${left > 0 ? `; ${left} still full on arrival` : ''}`;
  },
  none: 'There is no plan that keeps the reserve.',
  waysOut: 'Ways out, each computed again',
  noWayOut: '- none was found',
  notAllTried: '- not all were tried: the time ran out',
  unnamed: LINE_WORDS.unnamedPlaces,
};
