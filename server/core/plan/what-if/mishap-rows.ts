import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { needOf } from '../../gaps/need.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { drawableL } from '../../quantity/drawable.ts';
import { SLACK } from '../../quantity/slack.ts';
import { pointsAt, type Run, type RunPoint, runOf } from '../drive/run.ts';
import type { Basis } from './basis.ts';
import { bestL, type Mishap, type Struck, struckFigures, worstPlace } from './mishap.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** What mishaps are reckoned with. */
export interface MishapFacts {
  basis: Basis;
  rig: RigFile;
  waitDays: number;
  /** Null: at the worst place. */
  turnRoundAtM: number | null;
}

const runsOf = ({ sides }: Basis, commodity: Commodity): Run[] => sides[commodity].stretches.map(runOf);

function rowOf(
  commodity: Commodity,
  row: Pick<WhatIfRow, 'kind' | 'text'>,
  struck: Struck | null,
  mishap: Mishap,
  forced?: 'back',
): WhatIfRow[] {
  if (struck === null) return [];
  return [{ ...row, commodity, id: null, instead: null, ...struckFigures(struck, mishap, forced) }];
}

/** The largest container of each commodity losing all that is in it, at the worst place. */
export function containerLostRows({ basis, rig }: MishapFacts): WhatIfRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const tanks = rig[commodity].tanks.map((tank) => ({
      name: tank.name,
      litres: drawableL([tank]),
    }));
    const largest = tanks.reduce((most, tank) => (tank.litres > most.litres ? tank : most));
    const { canL } = basis.sides[commodity].side;
    const isCan = basis.sides[commodity].cans > 0 && canL > largest.litres;
    // Which of several tanks is how full nobody was told: the one that is lost is as full as it can be.
    const lostL = (point: RunPoint) =>
      isCan ? Math.max(0, ...point.cansL) : Math.max(0, Math.min(largest.litres, point.tankL));
    const mishap = { lostL };
    const facts = { commodity, tank: isCan ? null : largest.name };
    const text = { phrase: 'container-loses-all', facts } as const;
    const worst = worstPlace(runsOf(basis, commodity), mishap);
    return rowOf(commodity, { kind: 'container-lost', text }, worst, mishap);
  });
}

/** One pump that fails: what is in the fixed tanks that hang on it stays out of reach. */
export function pumpFailsRows({ basis, rig }: MishapFacts): WhatIfRow[] {
  const apartL = drawableL(rig.water.tanks.filter((tank) => tank.apart));
  // Tanks that stand apart are taken to be as empty as they can be.
  const joinedL = drawableL(rig.water.tanks) - apartL;
  const mishap: Mishap = { lostL: ({ tankL }) => Math.max(0, Math.min(joinedL, tankL)) };
  const text = { phrase: 'water-pump-fails', facts: { tanksApart: apartL > 0 } } as const;
  return rowOf('water', { kind: 'pump-fails', text }, worstPlace(runsOf(basis, 'water'), mishap), mishap);
}

/** Days of waiting at the worst place: water by the day, fuel where the rig tells what goes while it stands. */
export function waitRows({ basis, waitDays }: MishapFacts): WhatIfRow[] {
  const text = { phrase: 'waiting', facts: { days: waitDays } } as const;
  return COMMODITIES.flatMap((commodity) => {
    if (commodity === 'fuel' && standingLPerDay(basis.sides.fuel.side.course) === 0) return [];
    const struck = runsOf(basis, commodity).flatMap((run) => {
      const mishap = waitOn(run, waitDays);
      const place = worstPlace([run], mishap);
      return place === null ? [] : [{ place, mishap }];
    });
    const [first, ...rest] = struck;
    if (first === undefined) return [];
    const worst = rest.reduce((a, b) => (bestL(b.place) < bestL(a.place) - SLACK ? b : a), first);
    return rowOf(commodity, { kind: 'wait', text }, worst.place, worst.mishap);
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
  const { high } = course.rig.water.litresPerDay;
  return { lostL: () => lostL, lostBackL: () => waitDays * high, moreReserveL: lostL * shareOfNeed };
}

/** Turning round and driving back to the supply behind: at a place, or where that leaves least. */
export function turnRoundRows({ basis, turnRoundAtM: atM }: MishapFacts): WhatIfRow[] {
  const mishap: Mishap = { lostL: () => 0 };
  return COMMODITIES.flatMap((commodity) => {
    let worst: Struck | null = null;
    for (const run of runsOf(basis, commodity)) {
      const { from, to } = run.stretch;
      if (atM !== null && (atM <= from.atM || atM > to.atM)) continue;
      for (const point of atM === null ? run.points : pointsAt(run, atM)) {
        if (point.backL === null) continue;
        // Going on is no choice here: only what is left behind counts.
        const backL = point.litres - (run.figures.arriveL - run.arriveL) - point.backL;
        if (worst === null || backL < worst.backL! - SLACK) worst = { run, point, onL: run.arriveL, backL };
      }
    }
    const text = { phrase: 'turning-round', facts: { atM: worst?.point.atM ?? null } } as const;
    return rowOf(commodity, { kind: 'turn-round', text }, worst, mishap, 'back');
  });
}
