import type { FuelLog, LogRates, WaterLog } from '../../server/contract/answers/log.ts';
import type { RigFile } from '../../server/contract/rig.ts';

/** A rig asks for more than nothing. */
const LEAST = 0.01;

/** Two decimals, low down and high up: rounding never makes the range narrower. */
export function roundedRates({ low, typical, high }: LogRates): LogRates {
  // A thousandth of the last digit: 15.2 as it comes out of a sum may be 15.200000000000001.
  const down = Math.max(LEAST, Math.floor(low * 100 + 1e-3) / 100);
  const up = Math.max(LEAST, Math.ceil(high * 100 - 1e-3) / 100);
  return { low: down, typical: Math.min(up, Math.max(down, Math.round(typical * 100) / 100)), high: up };
}

/** The rig with the fuel use that a log taught, and what it was observed on as far as the log says it. */
export function withFuelLog(rig: RigFile, log: FuelLog): RigFile {
  const { observed: _, ...fuel } = rig.fuel;
  const { surface, massKg } = log.observed;
  // What the old rate was observed on says nothing of the new one.
  const observed = {
    ...(surface === null ? {} : { surface }),
    ...(massKg === null ? {} : { massKg: Math.round(massKg) }),
  };
  const told = Object.keys(observed).length > 0;
  return {
    ...rig,
    fuel: {
      ...fuel,
      litresPer100Km: roundedRates(log.litresPer100Km),
      ...(told ? { observed } : {}),
    },
  };
}

/** The rig with the water use that a log taught, for all aboard: a crew's observed figure where there is a crew. */
export function withWaterLog(rig: RigFile, log: WaterLog): RigFile {
  const litresPerDay = roundedRates(log.crew.litresPerDay);
  if (rig.crew === undefined) return { ...rig, water: { ...rig.water, litresPerDay } };
  const { litresPerDay: _, ...water } = rig.water;
  return { ...rig, water, crew: { ...rig.crew, observedLitresPerDay: litresPerDay } };
}

/** People of the rig's crew; null where it tells none. */
export const crewCount = (rig: RigFile): number | null =>
  rig.crew === undefined ? null : rig.crew.people.reduce((sum, { count }) => sum + (count ?? 1), 0);
