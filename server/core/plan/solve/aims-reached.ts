import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { hangsOn, type WeakEvidence } from '../legs/hangs-on.ts';
import type { Leg } from '../legs/leg.ts';
import type { Aim } from '../model/aims.ts';
import type { AimReached } from '../model/choice.ts';
import type { LegSearches } from '../model/leg-searches.ts';
import type { Cans } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { edgeAt, endsOf } from '../side/carry-side.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';

type Legs = Readonly<Record<Commodity, readonly Leg[]>>;

export interface BestPlan {
  readonly legs: Legs;
  readonly cans: Cans;
  /** Whether all plans there are were looked at. */
  readonly complete: boolean;
}

/** What the best of the plans that were looked at reaches of each aim; aims that no plan costs anything are left out. */
export function aimsReached(
  { sides }: CarryQuestion,
  searches: LegSearches,
  { legs, cans, complete }: BestPlan,
): AimReached[] {
  const reached = (aim: Aim, value: number): AimReached => {
    const proven = complete || value <= NOISE;
    return { aim, value, proven, gap: proven ? 0 : value };
  };
  const weakM = (commodity: Commodity, { hops }: Leg, evidence: WeakEvidence): number =>
    hops.reduce((sum, hop) => {
      const [from, to] = endsOf(sides[commodity], hop);
      return hangsOn(sides[commodity], hop) === evidence ? sum + to.atM - from.atM : sum;
    }, 0);
  const all = { fuel: searches.fuel.legs, water: searches.water.legs };
  const weak = WEAK.filter(([, evidence]) => overLegs(all, (...leg) => weakM(...leg, evidence)) > 0);
  const passings = COMMODITIES.flatMap((commodity) => sides[commodity].edges).filter(isPassing);
  return [
    ...weak.map(([aim, evidence]) =>
      reached(
        aim,
        overLegs(legs, (...leg) => weakM(...leg, evidence)),
      ),
    ),
    reached('cans', cans.fuel + cans.water),
    ...(passings.some(({ detourM }) => detourM > 0) ? [reached('driving-m', drivingM(sides, legs))] : []),
    ...(overLegs(all, (_commodity, { canM }) => canM) > 0
      ? [
          reached(
            'can-m',
            overLegs(legs, (_commodity, { canM }) => canM),
          ),
        ]
      : []),
  ];
}

/** Float noise, in any unit of an aim. */
const NOISE = 1e-6;

const WEAK: readonly [Aim, WeakEvidence][] = [
  ['doubtful-m', 'doubtful'],
  ['implied-m', 'implied'],
  ['stated-m', 'stated'],
];

const isPassing = ({ kind }: SupplyEdge): boolean => kind === 'passing';

const overLegs = (legs: Legs, of: (commodity: Commodity, leg: Leg) => number): number =>
  COMMODITIES.reduce(
    (sum, commodity) => legs[commodity].reduce((total, leg) => total + of(commodity, leg), sum),
    0,
  );

/** Fuel and water of one place are one halt. */
function drivingM(sides: CarryQuestion['sides'], legs: Legs): number {
  const halts: SupplyEdge[] = [];
  for (const commodity of COMMODITIES)
    for (const { to } of legs[commodity].flatMap(({ hops }) => hops)) {
      const edge = edgeAt(sides[commodity], to);
      if (isPassing(edge) && !halts.some((halt) => isSamePlace(halt, edge))) halts.push(edge);
    }
  return halts.reduce((sum, { detourM }) => sum + 2 * detourM, 0);
}
