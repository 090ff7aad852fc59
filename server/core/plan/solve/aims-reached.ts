import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { hangsOn, type WeakEvidence } from '../legs/hangs-on.ts';
import type { Leg } from '../legs/leg.ts';
import type { Aim } from '../model/aims.ts';
import type { AimReached } from '../model/choice.ts';
import type { LegSearches } from '../model/leg-searches.ts';
import { type Cans, cansBeyond } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { stopNumbers } from '../question/stop-numbers.ts';
import { edgeAt, endsOf } from '../side/carry-side.ts';
import { fillingM, type Halting, haltingAt, hoursPerOffM } from '../side/lost-time.ts';

type Legs = Readonly<Record<Commodity, readonly Leg[]>>;

export interface BestPlan {
  readonly legs: Legs;
  readonly cans: Cans;
  /** Whether all plans there are were looked at. */
  readonly complete: boolean;
  /** So many aims, from the first on, no plan can reach better all the same; left out: none. */
  readonly provenAims?: number;
  /** The greatest least margin, metres; left out or null where it is not proven. */
  readonly leastMarginM?: number | null;
}

/** What the best of the plans that were looked at reaches of each aim; aims that no plan costs anything are left out. */
export function aimsReached(
  { sides, owned }: CarryQuestion,
  searches: LegSearches,
  { legs, cans, complete, provenAims = 0, leastMarginM = null }: BestPlan,
): AimReached[] {
  const reached = (aim: Aim, value: number): AimReached => {
    const proven = complete || value <= NOISE || AIMS.indexOf(aim) < provenAims;
    return { aim, value, proven, gap: proven ? 0 : value };
  };
  const weakM = (commodity: Commodity, { hops }: Leg, evidence: WeakEvidence): number =>
    hops.reduce((sum, hop) => {
      const [from, to] = endsOf(sides[commodity], hop);
      return hangsOn(sides[commodity], hop) === evidence ? sum + to.atM - from.atM : sum;
    }, 0);
  const toGet = cansBeyond(cans, owned);
  const all = { fuel: searches.fuel.legs, water: searches.water.legs };
  const weak = WEAK.filter(([, evidence]) => overLegs(all, (...leg) => weakM(...leg, evidence)) > 0);
  const mayDrive = haltsM(sides, all, 'drivingM') > 0;
  const mayLose = lostH(sides, all) > 0;
  return [
    ...weak.map(([aim, evidence]) =>
      reached(
        aim,
        overLegs(legs, (...leg) => weakM(...leg, evidence)),
      ),
    ),
    reached('cans-to-get', toGet.fuel + toGet.water),
    ...(mayLose ? [reached('lost-h', lostH(sides, legs))] : []),
    ...(mayDrive ? [reached('driving-m', haltsM(sides, legs, 'drivingM'))] : []),
    ...(overLegs(all, (_commodity, { canM }) => canM) > 0
      ? [
          reached(
            'can-m',
            overLegs(legs, (_commodity, { canM }) => canM),
          ),
        ]
      : []),
    ...(leastMarginM !== null && complete ? [reached('least-margin-m', leastMarginM)] : []),
  ];
}

/** Those that add up, in their order. */
const AIMS: readonly Aim[] = [
  'doubtful-m',
  'implied-m',
  'stated-m',
  'cans-to-get',
  'lost-h',
  'driving-m',
  'can-m',
];

/** Float noise, in any unit of an aim. */
const NOISE = 1e-6;

const WEAK: readonly [Aim, WeakEvidence][] = [
  ['doubtful-m', 'doubtful'],
  ['implied-m', 'implied'],
  ['stated-m', 'stated'],
];

const overLegs = (legs: Legs, of: (commodity: Commodity, leg: Leg) => number): number =>
  COMMODITIES.reduce(
    (sum, commodity) => legs[commodity].reduce((total, leg) => total + of(commodity, leg), sum),
    0,
  );

/** Halts, and filling where hops begin. */
function lostH(sides: CarryQuestion['sides'], legs: Legs): number {
  const fillingsM = overLegs(legs, (commodity, { hops }) => {
    const side = sides[commodity];
    return hops.reduce((sum, { from, filledL }) => sum + fillingM(side, edgeAt(side, from), filledL), 0);
  });
  return (haltsM(sides, legs, 'lostM') + fillingsM) * hoursPerOffM(sides.fuel);
}

/** Fuel and water of one stop are one detour, the longer of the two. */
function haltsM(sides: CarryQuestion['sides'], legs: Legs, part: keyof Halting): number {
  const numbers = stopNumbers(sides);
  const most = new Map<number, number>();
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const own = new Map<number, number>();
    for (const { to } of legs[commodity].flatMap(({ hops }) => hops)) {
      const edge = edgeAt(side, to);
      const stop = numbers.get(edge);
      if (stop !== undefined) own.set(stop, (own.get(stop) ?? 0) + haltingAt(side, edge)[part]);
    }
    for (const [stop, metres] of own) most.set(stop, Math.max(metres, most.get(stop) ?? 0));
  }
  return [...most.values()].reduce((sum, metres) => sum + metres, 0);
}
