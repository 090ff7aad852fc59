import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from '../../../web/units/conversions.ts';
import { fieldText, readTyped } from '../../../web/units/quantities.ts';
import type { UnitSystem } from '../../../web/units/units.ts';

const KINDS: QuantityKind[] = [
  'volume',
  'distance',
  'speed',
  'fuelUse',
  'waterUse',
  'litresPer1000Km',
  'hourUse',
  'share',
  'percent',
  'days',
  'hours',
  'factor',
  'mass',
  'length',
  'area',
  'degrees',
  'pressure',
  'tyrePressure',
  'flow',
  'minutes',
  'bore',
  'pores',
  'cloudiness',
  'log',
  'dose',
  'strength',
  'count',
];
const UNITS: UnitSystem[] = ['metric', 'us', 'imperial'];

describe('quantities in fields', () => {
  it('reads what people type', () => {
    expect(readTyped(' 14.5 ', 'volume', 'metric')).toEqual({ ok: true, value: 14.5 });
    expect(readTyped('14,5', 'volume', 'metric')).toEqual({ ok: true, value: 14.5 });
    expect(readTyped('1 450', 'distance', 'metric')).toEqual({ ok: true, value: 1450 });
    expect(readTyped('.5', 'days', 'metric')).toEqual({ ok: true, value: 0.5 });
    expect(readTyped('10', 'share', 'metric')).toEqual({ ok: true, value: 0.1 });
  });

  it.each(['', '12x', '1e3', 'full', '--3', '1.2.3', 'Infinity'])('refuses %j with a reason', (text) => {
    const read = readTyped(text, 'volume', 'metric');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.why).toMatch(/number/);
  });

  it('refuses a figure that can be read two ways: 1,450 is 1450 to some and 1.45 to others', () => {
    expect(readTyped('1,450', 'distance', 'metric').ok).toBe(false);
  });

  it('passes a negative figure on, for the server to refuse with its reason', () => {
    expect(readTyped('-5', 'volume', 'metric')).toEqual({ ok: true, value: -5 });
  });

  it('reads miles to the gallon: 100 l/100 km is 2.352 US and 2.825 imperial', () => {
    // NIST SP 811 (B.8): mile per US gallon = 0.4251437 km/l, so 235.2146 / mpg is l/100 km.
    expect(fieldText(100, 'fuelUse', 'us')).toBe('2.352');
    expect(fieldText(100, 'fuelUse', 'imperial')).toBe('2.825');
    const read = readTyped('20', 'fuelUse', 'us');
    expect(read.ok && read.value).toBeCloseTo(11.76073, 4);
    expect(readTyped('0', 'fuelUse', 'us').ok).toBe(false);
  });

  it('reads degrees Fahrenheit in the US and degrees Celsius elsewhere', () => {
    expect(fieldText(40, 'celsius', 'us')).toBe('104');
    expect(fieldText(40, 'celsius', 'imperial')).toBe('40');
    expect(readTyped('-40', 'celsius', 'us')).toEqual({ ok: true, value: -40 });
  });

  it('shows tyre pressure, areas and use by the hour in the reader’s units', () => {
    // One bar is 14.50377 psi; 1 m² is 10.76391 ft²; 1 L is 0.2641721 US gal (NIST SP 811, B.8).
    expect(fieldText(2.4, 'tyrePressure', 'us')).toBe('34.81');
    expect(fieldText(1.6, 'area', 'imperial')).toBe('17.22');
    expect(fieldText(1.2, 'hourUse', 'us')).toBe('0.317');
    expect(fieldText(20, 'degrees', 'us')).toBe('20');
  });

  it('shows a metric value as it was given', () => {
    expect(fieldText(130, 'volume', 'metric')).toBe('130');
    expect(fieldText(15.5, 'fuelUse', 'metric')).toBe('15.5');
    expect(fieldText(0.1, 'share', 'metric')).toBe('10');
  });

  it('reads its own text back, to the four figures that a converted one is shown with', () => {
    const value = fc.double({ min: 0.01, max: 5000, noNaN: true });
    fc.assert(
      fc.property(value, fc.constantFrom(...KINDS), fc.constantFrom(...UNITS), (metric, kind, units) => {
        const read = readTyped(fieldText(metric, kind, units), kind, units);
        expect(read.ok).toBe(true);
        if (read.ok) expect(Math.abs(read.value - metric) / metric).toBeLessThan(5.1e-4);
      }),
    );
  });
});
