import type { Commodity } from '../../../contract/common.ts';
import type { PlanStopAsk } from '../../../contract/plan.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { containersOf, sharesOf, tanksOf } from '../../mass/containers.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { Driven, DrivenLeg } from '../drive/drive.ts';
import { gradesAfter } from '../drive/grades.ts';
import { runOf, turnBackOf } from '../drive/run.ts';
import { weakestEnd } from '../question/leg.ts';
import { planEdge } from '../question/plan-edge.ts';
import type { CarrySide } from '../question/problem.ts';
import { supplyStops } from '../question/supply-stops.ts';
import { askOf, waitHoursAt } from '../question/supply-terms.ts';
import type { PlanCarry, PlanLeg, PlanLevel } from './plan-leg.ts';
import type { PlanStop, PlanStopPassing } from './plan-stop.ts';

/** A driven leg as it is told. */
export function legShown({ course, canL }: CarrySide, leg: DrivenLeg): PlanLeg {
  const { figures, from, to, tankL, cans, detours } = leg;
  const { departL, needL, reserveL, arriveL, verdict, acrossNoData } = figures;
  const turnBackM = turnBackOf(runOf({ course, from, to, tankL, cans, canL, detours }));
  return {
    from: planEdge(from),
    to: planEdge(to),
    cans: leg.cans,
    tankL: leg.tankL,
    shortL: leg.shortL,
    departL,
    needL,
    reserveL,
    arriveL,
    marginL: leg.marginL,
    verdict,
    acrossNoData,
    weakest: weakestEnd(from, to),
    turnBackM,
  };
}

/** Cans that are carried, one row for each leg that has any, in route order. */
export function carriesOf(sides: Record<Commodity, CarrySide>, driven: Driven): PlanCarry[] {
  return COMMODITIES.flatMap((commodity) =>
    driven[commodity]
      .filter(({ cans }) => cans > 0)
      .map(({ from, to, cans, poursM }): PlanCarry => {
        const lastM = poursM.length < cans ? to.atM : poursM.at(-1)!;
        return {
          commodity,
          cans,
          litres: cans * sides[commodity].canL,
          from: planEdge(from),
          to: planEdge(to),
          fromM: from.atM,
          toM: lastM,
          pourAtM: poursM,
        };
      }),
  ).sort((a, b) => a.fromM - b.fromM);
}

/** All levels of a commodity along the route; the grades of water where a crew tells them. */
export function levelsShown(file: RigFile, side: CarrySide, legs: readonly DrivenLeg[]): PlanLevel[] {
  const { course, canL, cansDrinkable } = side;
  const inTanks = tanksReader(file, course.commodity);
  return legs.flatMap(({ levels, tankL, cans, figures }) =>
    levels.map((level): PlanLevel => {
      const totalL = level.tankL + level.cansL.reduce((sum, litres) => sum + litres, 0);
      const facts = { tankL, cansL: cans * canL, cansDrinkable };
      const grades =
        course.commodity === 'water' ? gradesAfter(course.rig, facts, figures.departL - totalL) : null;
      return {
        atM: level.atM,
        tankL: level.tankL,
        ...inTanks(level.tankL),
        cansL: level.cansL,
        totalL,
        ...(grades ?? {}),
      };
    }),
  );
}

/** Reads what is in each fixed tank from what is in all, where the rig tells it. */
function tanksReader(file: RigFile, commodity: Commodity): (tankL: number) => Pick<PlanLevel, 'tanksL'> {
  const tanks = tanksOf({ containers: containersOf(file, { fuel: 0, water: 0 }) }, commodity);
  const told = file.vehicle?.tanksEmpty;
  if (tanks.length > 1 && told === undefined) return () => ({});
  const emptying = told === 'in-order' ? 'first-first' : 'together';
  return (tankL) => ({ tanksL: sharesOf(tanks, tankL, emptying) });
}

/** Every supply stop with its passings, used or passed by. */
export function stopsShown(
  passings: readonly Passing[],
  asked: readonly PlanStopAsk[],
  sides: Record<Commodity, CarrySide>,
  driven: Driven,
): PlanStop[] {
  return supplyStops(passings).map(({ fromM, toM, passings: inside }) => {
    const shown = inside.map((passing): PlanStopPassing => {
      const { id, name, kind, commodity, evidence } = passing;
      const { atM, detourM } = passing;
      const told = askOf(asked, passing);
      const legs = driven[commodity];
      const into = legs.findIndex(({ to }) => to.kind === 'passing' && to.id === id && to.atM === atM);
      const arriving = legs[into];
      const leaving = legs[into + 1];
      const known = {
        id,
        name,
        kind,
        commodity,
        atM,
        detourM,
        evidence,
        mostL: told?.mostLitres?.[commodity] ?? null,
        waitHours: waitHoursAt(passing, told) ?? 0,
        fillHours: 0,
      };
      if (arriving === undefined || leaving === undefined) {
        return { ...known, used: false, arriveL: null, fillL: null, cansFull: null };
      }
      const aboardL = arriving.figures.arriveL;
      const leavesL = leaving.tankL + leaving.cans * sides[commodity].canL;
      return {
        ...known,
        used: true,
        arriveL: aboardL,
        fillL: leavesL - aboardL,
        cansFull: leaving.cans,
        fillHours: (leaving.from.fillDays ?? 0) * sides[commodity].course.rig.pace.hoursPerDay,
      };
    });
    return { fromM, toM, used: shown.some(({ used }) => used), passings: shown };
  });
}
