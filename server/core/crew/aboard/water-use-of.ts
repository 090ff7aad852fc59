import type { WaterUse as WaterUseTold } from '../../../contract/crew.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Term } from '../../quantity/term.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { aboardOf } from '../needs/graded-store.ts';
import { NOTHING } from '../needs/range.ts';
import { crewCautions } from './crew-cautions.ts';
import { enduranceOf, gradeEndurance } from './endurance.ts';
import { heldSafe } from './held.ts';
import { drinkingPerDayL, type HelpHours, hoursToHelp, reserveBaseL } from './help-hours.ts';
import { mixingOf, treatText } from './mixing.ts';

/** Float noise, litres. */
const SLACK_L = 1e-9;

export interface WaterUseFacts {
  /** With the reserve that lasts until help is there. */
  rig: Rig;
  /** Its settled file. */
  water: RigFile['water'];
  trip: HelpHours;
  /** Aboard at the start, litres. */
  aboardL: number;
  passings: readonly Passing[];
}

/** The water of a trip in full. */
export type WaterUse = Omit<WaterUseTold, 'working'> & { readonly working: readonly Term[] };

/** Water use in full: litres a day by use and grade, how long they last, where the reserve is, what to know of it. */
export function waterUseOf({ rig, water, trip, aboardL, passings }: WaterUseFacts): WaterUse {
  const use = rig.crew?.use ?? null;
  const litres = reserveBaseL(rig);
  const held = heldSafe(water);
  const perDayL = drinkingPerDayL(rig);
  const reserve: WaterUse['reserve'] = {
    litres,
    days: perDayL === 0 ? 0 : litres / perDayL,
    hoursToHelp: hoursToHelp(trip),
    ...held,
    holds: held.safeL >= litres - SLACK_L,
  };
  const treatAt = rig.treatment?.at ?? null;
  const mixing = mixingOf(passings, treatAt);
  const cautions = crewCautions(rig, trip, reserve);
  if (rig.crew !== null && water.cans?.grade === 'washing' && water.cans.owned > 0) {
    const text = 'The owned water cans are kept for washing: what is missing of drinking water needs others.';
    cautions.push({ code: 'cans-kept-for-washing', text });
  }
  const store = rig.water.grades;
  if (store !== null && store.keptForWashingL > 0 && aboardL < rig.water.drawableL - SLACK_L) {
    const text =
      'Which tank is not full at the start was not told: what is kept for washing is taken for the fullest, the worst for drinking.';
    cautions.push({ code: 'start-grades-assumed', text });
  }
  cautions.push(...mixing.map(({ text }) => ({ code: 'water-lowered', text })));
  return {
    from: use?.from ?? 'rate',
    litresPerDay: rig.water.litresPerDay,
    uses: use?.uses ?? [],
    notCarriedLitresPerDay: use?.notCarried ?? NOTHING,
    grades: gradesOf(rig, aboardL),
    aboardL,
    enduranceDays: enduranceOf(aboardL, rig.water.litresPerDay),
    heat: use?.heat ?? null,
    reserve,
    treatAt,
    mixing,
    treatText: treatText(treatAt),
    cautions,
    working: workingOf(rig),
  };
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
  if (crew === null)
    return [{ label: 'your own figure for all aboard', value: water.litresPerDay.high, unit: 'l a day' }];
  const { uses, heatTerms } = crew.use;
  const rest = heatTerms.length === 0 ? uses : uses.filter((one) => one.use !== 'drinking');
  const terms = rest.map((one) => ({
    label: `${one.use} (${one.grade} grade): ${one.source}`,
    value: one.litresPerDay.high,
    unit: 'l a day',
  }));
  return [...heatTerms, ...terms];
}
