import type { RigFile } from '../../../contract/rig.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Term } from '../../quantity/term.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { aboardOf } from '../needs/graded-store.ts';
import { NOTHING } from '../needs/range.ts';
import { crewCautions } from './crew-cautions.ts';
import { enduranceOf, gradeEndurance } from './endurance.ts';
import { drinkingPerDayL, type HelpHours, hoursToHelp, reserveBaseL } from './help-hours.ts';
import { mixingOf } from './mixing.ts';
import { safeWater } from './safe-water.ts';
import type { HeatOnRoute, ReserveWater, WaterUse } from './water-use.ts';

export interface WaterUseFacts {
  /** With the reserve that lasts until help is there. */
  rig: Rig;
  /** Its settled file. */
  water: RigFile['water'];
  trip: HelpHours;
  /** Aboard at the start, litres. */
  aboardL: number;
  passings: readonly Passing[];
  /** What the heat of stretches comes to. */
  inHeat: readonly HeatOnRoute[];
}

/** Water use in full: litres a day by use and grade, how long they last, where the reserve is, what to know of it. */
export function waterUseOf(facts: WaterUseFacts): WaterUse {
  const { rig, aboardL } = facts;
  const use = rig.crew?.use ?? null;
  const reserve = reserveOf(facts);
  const treatAt = rig.treatment?.at ?? null;
  const { mixing, cautions: lowered } = mixingOf(facts.passings, treatAt);
  return {
    from: use?.from ?? 'rate',
    litresPerDay: rig.water.litresPerDay,
    uses: use?.uses ?? [],
    notCarriedLitresPerDay: use?.notCarried ?? NOTHING,
    grades: gradesOf(rig, aboardL),
    aboardL,
    enduranceDays: enduranceOf(aboardL, rig.water.litresPerDay),
    heat: use?.heat ?? null,
    inHeat: facts.inHeat,
    reserve,
    treatAt,
    mixing,
    treatText: { phrase: 'treated-at', facts: { at: treatAt } },
    cautions: [...crewCautions(rig, facts.trip, reserve), ...gradeCautions(facts), ...lowered],
    working: workingOf(rig),
  };
}

function reserveOf({ rig, water, trip }: WaterUseFacts): ReserveWater {
  const litres = reserveBaseL(rig);
  const perDayL = drinkingPerDayL(rig);
  const safe = safeWater(water);
  return {
    litres,
    days: perDayL === 0 ? 0 : litres / perDayL,
    hoursToHelp: hoursToHelp(trip),
    ...safe,
    holds: safe.safeL >= litres - SLACK,
  };
}

/** What to know where containers are kept for one grade. */
function gradeCautions({ rig, water, aboardL }: WaterUseFacts): Caution[] {
  const cautions: Caution[] = [];
  if (rig.crew !== null && water.cans?.grade === 'washing' && water.cans.owned > 0) {
    cautions.push({ code: 'cans-kept-for-washing', facts: {} });
  }
  const store = rig.water.grades;
  if (store !== null && store.keptForWashingL > 0 && aboardL < rig.water.drawableL - SLACK) {
    cautions.push({ code: 'start-grades-assumed', facts: {} });
  }
  return cautions;
}

function gradesOf(rig: Rig, aboardL: number): WaterUse['grades'] {
  const store = rig.water.grades;
  if (store === null) return null;
  const aboard = aboardOf(store, aboardL);
  const days = gradeEndurance(store, aboard);
  return {
    drinking: {
      litresPerDay: store.drinkingPerDay,
      aboardL: aboard.drinkingL + aboard.anyL,
      enduranceDays: days.drinking,
    },
    washing: {
      litresPerDay: store.washingPerDay,
      aboardL: aboard.washingL + aboard.anyL,
      enduranceDays: days.washing,
    },
  };
}

function workingOf({ crew, water }: Rig): Term[] {
  const unit = 'l a day';
  if (crew === null) {
    const label = { phrase: 'own-figure-for-all', facts: {} } as const;
    return [{ label, value: water.litresPerDay.high, unit }];
  }
  const { uses, heatTerms } = crew.use;
  const rest = heatTerms.length === 0 ? uses : uses.filter((one) => one.use !== 'drinking');
  const terms = rest.map(
    ({ use, grade, source, litresPerDay }): Term => ({
      label: { phrase: 'use-of-grade', facts: { use, grade, source } },
      value: litresPerDay.high,
      unit,
    }),
  );
  return [...heatTerms, ...terms];
}
