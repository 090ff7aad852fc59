import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { allLitres } from '../drive/containers.ts';
import type { DrivenLeg, DrivenLegs } from '../drive/drive.ts';
import type { DrivenPlan } from '../drive/driven-plan.ts';
import { gradesAfter } from '../drive/grades.ts';
import { lastWayBackM } from '../drive/turn-back/turn-back.ts';
import { weakestEnd } from '../legs/leg.ts';
import { tanksReader } from '../sheet/tanks-reader.ts';
import type { CarrySide, CarrySides } from '../side/carry-side.ts';
import { byCommodity } from '../side/other-of.ts';
import { planEdge } from '../side/plan-edge.ts';
import type { PlanCarry, PlanLeg, PlanLevel } from './plan-leg.ts';

/** All legs of a driven plan as they are told. */
export const planLegs = ({ legs }: Pick<DrivenPlan, 'legs'>): Record<Commodity, PlanLeg[]> =>
  byCommodity((commodity) => legs[commodity].map(planLeg));

/** A driven leg as it is told. */
export function planLeg(leg: DrivenLeg): PlanLeg {
  const { from, to, cans, tankL, shortL, marginL, figures, stretch } = leg;
  const { departL, needL, reserveL, arriveL, verdict, acrossNoData } = figures;
  return {
    from: planEdge(from),
    to: planEdge(to),
    cans,
    tankL,
    shortL,
    departL,
    needL,
    reserveL,
    arriveL,
    marginL,
    verdict,
    acrossNoData,
    weakest: weakestEnd(from, to),
    turnBackM: lastWayBackM(stretch),
  };
}

/** Cans that are carried, one row for each leg that has any, in route order. */
export function planCarries(sides: CarrySides, legs: DrivenLegs): PlanCarry[] {
  return COMMODITIES.flatMap((commodity) =>
    legs[commodity]
      .filter(({ cans }) => cans > 0)
      .map((leg) => planCarry(commodity, leg, sides[commodity].canL)),
  ).sort((a, b) => a.fromM - b.fromM);
}

function planCarry(commodity: Commodity, { from, to, cans, poursM }: DrivenLeg, canL: number): PlanCarry {
  const lastPourM = poursM.length < cans ? undefined : poursM.at(-1);
  return {
    commodity,
    cans,
    litres: cans * canL,
    from: planEdge(from),
    to: planEdge(to),
    fromM: from.atM,
    toM: lastPourM ?? to.atM,
    pourAtM: poursM,
  };
}

/** All levels of a commodity along the route; the grades of water where a crew tells them. */
export function planLevels(file: RigFile, side: CarrySide, legs: readonly DrivenLeg[]): PlanLevel[] {
  const { course, canL, cansDrinkable } = side;
  const inTanks = tanksReader(file, course.commodity);
  return legs.flatMap(({ levels, tankL, cans, figures }) =>
    levels.map((level): PlanLevel => {
      const totalL = allLitres(level);
      const facts = { tankL, cansL: cans * canL, cansDrinkable };
      const grades =
        course.commodity === 'water' ? gradesAfter(course.rig, facts, figures.departL - totalL) : null;
      return {
        atM: level.atM,
        tankL: level.tankL,
        ...(inTanks === null ? {} : { tanksL: inTanks(level.tankL) }),
        cansL: level.cansL,
        totalL,
        ...(grades ?? {}),
      };
    }),
  );
}
