/** For which temperatures the estimate of WBGT is meant, °C (ours). */
export const WBGT_RANGE_C = { from: 15, to: 50 };

/**
 * Wet-bulb globe temperature out of doors, °C, from the temperature in shade (°C) and relative humidity (percent):
 * 0.567 T + 0.393 e + 3.94 with e, the vapour pressure in hPa, 6.105 RH/100 exp(17.27 T / (237.7 + T)). It takes
 * moderately strong sun and light wind for granted. Source: Australian Bureau of Meteorology, thermal comfort (from
 * memory). A measured WBGT is better.
 */
export function estimatedWbgtC(temperatureC: number, humidityPercent: number): number {
  const vapourHPa =
    (humidityPercent / 100) * 6.105 * Math.exp((17.27 * temperatureC) / (237.7 + temperatureC));
  return 0.567 * temperatureC + 0.393 * vapourHPa + 3.94;
}
