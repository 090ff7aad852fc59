import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { standingLPerDay } from '../../gaps/course/standing.ts';
import { needOf } from '../../gaps/need.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { drawableL } from '../../quantity/drawable.ts';
import { SLACK } from '../../quantity/slack.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import type { Basis } from '../drive/basis.ts';
import { pointsAt, type Run, type RunPoint, runOf } from '../drive/run.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { bestL, type Mishap, type Struck, worstPlace } from './mishap.ts';
import { unfitL } from './stretch-row.ts';
import { struckFigures } from './struck-figures.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** What mishaps are reckoned with. */
export interface MishapFacts {
  readonly basis: Basis;
  readonly rig: RigFile;
  readonly waitDays: number;
  /** Whether what is filled at a supply is raw in the containers: treated only at the tap, behind the pump. */
  readonly isRaw?: (edge: SupplyEdge) => boolean;
  /** Metres along; null: at the worst place. */
  readonly turnRoundAtM: number | null;
}

const runsOf = ({ sides }: Basis, commodity: Commodity): Run[] => sides[commodity].stretches.map(runOf);

interface TankLitres {
  readonly name: string | null;
  readonly litres: number;
}

type RowHead = Pick<WhatIfRow, 'kind' | 'commodity' | 'text'>;

/** The row of a mishap where it strikes; none where it strikes nowhere. */
const rowOf = (head: RowHead, struck: Struck | null, mishap: Mishap, forced?: 'back'): WhatIfRow[] =>
  struck === null ? [] : [{ ...head, id: null, instead: null, ...struckFigures(struck, mishap, forced) }];

/** The largest container of each commodity losing all that is in it, at the worst place. */
export function containerLostRows({ basis, rig }: MishapFacts): WhatIfRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const tanks = rig[commodity].tanks.map((tank) => ({ name: tank.name, litres: drawableL([tank]) }));
    const none = { name: null, litres: 0 };
    const largest = tanks.reduce<TankLitres>((most, tank) => (tank.litres > most.litres ? tank : most), none);
    const { side, cans } = basis.sides[commodity];
    const isCan = cans > 0 && side.canL > largest.litres;
    if (!isCan && largest.name === null) return [];
    // Which of several tanks is how full nobody was told: the one that is lost is as full as it can be.
    const lostL = ({ cansL, tankL }: RunPoint) =>
      isCan ? Math.max(0, ...cansL) : Math.max(0, Math.min(largest.litres, tankL));
    const facts = { commodity, tank: isCan ? null : largest.name };
    return rowOf(
      { kind: 'container-lost', commodity, text: { phrase: 'container-loses-all', facts } },
      worstPlace(runsOf(basis, commodity), { lostL }),
      { lostL },
    );
  });
}

/**
 * One pump that fails: what is in the fixed tanks that hang on it stays out of reach. So does the treatment at the tap
 * behind it: raw water in cans, and in tanks apart, is not fit to drink then.
 */
export function pumpFailsRows({ basis, rig, isRaw = () => false }: MishapFacts): WhatIfRow[] {
  const apartL = drawableL(rig.water.tanks.filter((tank) => tank.apart));
  // Tanks that stand apart are taken to be as empty as they can be.
  const joinedL = drawableL(rig.water.tanks) - apartL;
  const mishap: Mishap = { lostL: ({ tankL }) => Math.max(0, Math.min(joinedL, tankL)) };
  const allLost: Mishap = { lostL: ({ litres }) => Math.max(0, litres) };
  const runs = runsOf(basis, 'water');
  const raw = worstPlace(
    runs.filter(({ stretch }) => isRaw(stretch.from)),
    allLost,
  );
  const fit = worstPlace(
    runs.filter(({ stretch }) => !isRaw(stretch.from)),
    mishap,
  );
  const isRawWorse = raw !== null && (fit === null || bestL(raw) < bestL(fit) - SLACK);
  const facts = { tanksApart: apartL > 0, raw: isRawWorse };
  const head = {
    kind: 'pump-fails',
    commodity: 'water',
    text: { phrase: 'water-pump-fails', facts },
  } as const;
  return isRawWorse ? rowOf(head, raw, allLost) : rowOf(head, fit, mishap);
}

/** Days of waiting at the worst place: water by the day, fuel where the rig tells what goes while it stands. */
export function waitRows({ basis, waitDays }: MishapFacts): WhatIfRow[] {
  const text = { phrase: 'waiting', facts: { days: waitDays } } as const;
  return COMMODITIES.flatMap((commodity) => {
    if (commodity === 'fuel' && standingLPerDay(basis.sides.fuel.side.course) === 0) return [];
    const waits = runsOf(basis, commodity).flatMap((run) => {
      const mishap = waitOn(run, waitDays);
      const place = worstPlace([run], mishap);
      return place === null ? [] : [{ place, mishap }];
    });
    const [first, ...others] = waits;
    if (first === undefined) return [];
    const worst = others.reduce((a, b) => (bestL(b.place) < bestL(a.place) - SLACK ? b : a), first);
    return rowOf({ kind: 'wait', commodity, text }, worst.place, worst.mishap);
  });
}

function waitOn({ stretch, figures }: Run, waitDays: number): Mishap {
  const { course, from, to } = stretch;
  const { shareOfNeed } = course.rig[course.commodity].reserve;
  if (course.commodity === 'fuel') {
    const litres = waitDays * standingLPerDay(course);
    return { lostL: () => litres, moreReserveL: litres * shareOfNeed };
  }
  const { way, needL } = figures;
  const later = needOf(course, from, to, { ...way, days: way.days + waitDays });
  const lostL = later.litres - needL;
  const perDay = mostWaterPerDay(course.rig);
  return { lostL: () => lostL, lostBackL: () => waitDays * perDay, moreReserveL: lostL * shareOfNeed };
}

/** Turning round and driving back to the supply behind: at a place, or where that leaves least. */
export function turnRoundRows({ basis, turnRoundAtM }: MishapFacts): WhatIfRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const turns = runsOf(basis, commodity).flatMap((run) => turnsOf(run, turnRoundAtM));
    const [first, ...others] = turns;
    if (first === undefined) return [];
    const worst = others.reduce((a, b) => (b.backL < a.backL - SLACK ? b : a), first);
    const text = { phrase: 'turning-round', facts: { atM: worst.point.atM } } as const;
    return rowOf({ kind: 'turn-round', commodity, text }, worst, { lostL: () => 0 }, 'back');
  });
}

/** Going on is no choice here: only what is left behind counts. */
interface Turn extends Struck {
  readonly backL: number;
}

/** Turning round at a place of a run, or at any of its points; none where it cannot be driven back. */
function turnsOf(run: Run, atM: number | null): Turn[] {
  const { from, to } = run.stretch;
  if (atM !== null && (atM <= from.atM || atM > to.atM)) return [];
  const points = atM === null ? run.points : pointsAt(run, atM);
  return points.flatMap((point) =>
    point.backL === null
      ? []
      : [{ run, point, onL: run.arriveL, backL: point.litres - unfitL(run) - point.backL }],
  );
}
