/**
 * Conditions under which chlorine is credited. WHO, Guidelines for drinking-water quality (1984, vol. I table 1; 4th
 * ed. from memory): at least 30 minutes, pH below 8.0, turbidity below 1 NTU ideal and below 5 NTU at most.
 */
export const CHLORINE = { minutes: 30, belowPh: 8, idealNtu: 1, belowNtu: 5 };
/**
 * Household dose, mg/l of free chlorine: 2.0 below 10 NTU, 4.0 from 10 to 100 NTU. Lantagne (2008), J AWWA 100(8).
 */
const DOSES = { clear: 2, cloudy: 4, cloudyFromNtu: 10, upToNtu: 100 };
/** "Double if cloudy, coloured or very cold": EPA 816-F-15-003. Below this is very cold (ours). */
const COLD_BELOW_C = 5;

/** What a dose meets. */
export interface ChlorineWater {
  turbidityNtu: number;
  /** Null when nobody measured. */
  ph: number | null;
  temperatureC: number | null;
}

/** The dose that a water asks for, mg/l of free chlorine; null where it is too cloudy for any. */
export function doseNeeded(water: ChlorineWater, standsNtu: number | null): number | null {
  const tooCloudy =
    standsNtu === null ? water.turbidityNtu >= CHLORINE.belowNtu : water.turbidityNtu > standsNtu;
  if (tooCloudy || water.turbidityNtu > DOSES.upToNtu) return null;
  const dose = water.turbidityNtu < DOSES.cloudyFromNtu ? DOSES.clear : DOSES.cloudy;
  return water.temperatureC !== null && water.temperatureC < COLD_BELOW_C ? dose * 2 : dose;
}

/** Millilitres in a drop (common practice, no source: 20 drops a millilitre). */
const DROP_ML = 0.05;

/** mg/l that drops of bleach of a strength (percent, weight by volume) give in litres of water. */
export const mgPerLitreOfDrops = (drops: number, bleachPercent: number, litres: number): number =>
  (drops * DROP_ML * bleachPercent * 10) / litres;

/** Drops of bleach for each litre that give a dose. */
export const dropsPerLitre = (mgPerLitre: number, bleachPercent: number): number =>
  mgPerLitre / mgPerLitreOfDrops(1, bleachPercent, 1);

/** Millilitres of a product of a strength (percent, weight by volume) that give litres of water a dose. */
export const mlFor = (mgPerLitre: number, productPercent: number, litres: number): number =>
  (mgPerLitre * litres) / (productPercent * 10);
