import { describe, expect, it } from 'vitest';
import {
  distanceIn,
  figureSignedMass,
  formatAtKm,
  formatBeforeKm,
  formatDays,
  formatFlow,
  formatHeight,
  formatKm,
  formatLength,
  formatLitres,
  formatMass,
  formatPressure,
  formatTemperature,
  perLitreFigure,
  volumeIn,
} from '../../../web/units/units.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('quantities for people', () => {
  it('joins number and unit by a no-break space', () => {
    expect(formatKm(438.2, 'metric')).toBe('438\u00a0km');
    expect(formatLitres(18, 'metric')).toBe('18\u00a0L');
    expect(formatDays(3)).toBe('3\u00a0days');
  });

  it('shows one decimal below ten and none above', () => {
    expect(plain(formatKm(9.44, 'metric'))).toBe('9.4 km');
    expect(plain(formatKm(9.96, 'metric'))).toBe('10 km');
    expect(plain(formatKm(1448.4, 'metric'))).toBe('1,448 km');
    expect(plain(formatLitres(0.758, 'metric'))).toBe('0.8 L');
    expect(plain(formatLitres(109.242, 'metric'))).toBe('109 L');
  });

  it('shows what is missing with a true minus sign and never a negative zero', () => {
    expect(plain(formatLitres(-9.442, 'metric'))).toBe('\u22129.4 L');
    expect(plain(formatLitres(-0.01, 'metric'))).toBe('0 L');
    expect(plain(formatKm(0, 'metric'))).toBe('0 km');
    expect(plain(formatKm(0.02, 'metric'))).toBe('< 0.1 km');
  });

  it('converts by the legal definitions of mile and gallon', () => {
    expect(distanceIn(1.609344, 'us')).toBe(1);
    expect(distanceIn(1.609344, 'imperial')).toBe(1);
    expect(volumeIn(3.785411784, 'us')).toBe(1);
    expect(volumeIn(4.54609, 'imperial')).toBe(1);
    expect(plain(formatKm(438, 'us'))).toBe('272 mi');
    expect(plain(formatLitres(130, 'us'))).toBe('34 gal');
    expect(plain(formatLitres(130, 'imperial'))).toBe('29 gal');
  });

  it('names a place along the route before its figure', () => {
    expect(plain(formatAtKm(212.4, 'metric'))).toBe('km 212');
    expect(plain(formatAtKm(212.4, 'us'))).toBe('mile 132');
  });

  it('counts one day as a day', () => {
    expect(plain(formatDays(1))).toBe('1 day');
    expect(plain(formatDays(1.04))).toBe('1 day');
    expect(plain(formatDays(2.46))).toBe('2.5 days');
    expect(plain(formatDays(0.01))).toBe('< 0.1 days');
    expect(plain(formatDays(0))).toBe('0 days');
  });

  it('sets the vehicle’s measures and what a litre adds in the units of each place', () => {
    expect(plain(formatLength(2.85, 'metric'))).toBe('2.85 m');
    expect(plain(formatLength(0.3048 * 9.4, 'us'))).toBe('9.4 ft');
    expect(figureSignedMass(25.2, 'metric')).toBe('+25');
    expect(figureSignedMass(-4.1, 'metric')).toBe('−4');
    expect(figureSignedMass(0.2, 'metric')).toBe('0');
    expect(figureSignedMass(0.45359237 * 100, 'us')).toBe('+100');
    // Water: 1 kg a litre is 8.345 lb in a US gallon, 10.022 lb in an imperial one.
    expect(perLitreFigure(1, 'metric')).toBe('1.00');
    expect(perLitreFigure(-0.07, 'metric')).toBe('−0.07');
    expect(perLitreFigure(1, 'us')).toBe('8.35');
    expect(perLitreFigure(1, 'imperial')).toBe('10.02');
  });

  it('sets masses, heights, flows, pressures and temperatures in the units of each place', () => {
    expect(plain(formatMass(0.45359237 * 5000, 'us'))).toBe('5,000 lb');
    expect(plain(formatMass(2268, 'metric'))).toBe('2,268 kg');
    expect(plain(formatHeight(0.3048 * 4000, 'imperial'))).toBe('4,000 ft');
    expect(plain(formatFlow(3.785411784, 'us'))).toBe('1 gal/min');
    expect(plain(formatFlow(7.5, 'metric'))).toBe('7.5 L/min');
    // 50 psi is 345 kPa to the nearest.
    expect(plain(formatPressure(345, 'us'))).toBe('50 psi');
    expect(plain(formatPressure(345, 'metric'))).toBe('345 kPa');
    expect(plain(formatTemperature(100, 'us'))).toBe('212 °F');
    expect(plain(formatTemperature(-40, 'us'))).toBe('−40 °F');
    expect(plain(formatTemperature(40, 'imperial'))).toBe('40 °C');
  });
});

describe('a place that must not be passed', () => {
  it('is never told as lying farther than it does, in any units', () => {
    expect(formatBeforeKm(566.92, 'metric')).toBe('km\u00a0566');
    // 811.9 km are 504.49 miles, 812 are 504.55.
    expect(formatBeforeKm(812, 'us')).toBe('mile\u00a0504');
    expect(formatBeforeKm(812, 'imperial')).toBe('mile\u00a0504');
  });
});
