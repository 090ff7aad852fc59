import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UNIT_CHOICES } from '../../../server/words/parts/reader-units.ts';
import { named, storedUnits, unitsFromStored, withUnit } from '../../../web/units/choice.ts';
import { unitOf, unitsOf } from '../../../web/units/conversions.ts';
import { fieldText, readTyped } from '../../../web/units/quantities.ts';
import { formatAtKm, formatKm, formatLitres, type UnitSystem } from '../../../web/units/units.ts';
import { setIn } from '../../../web/words/said.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const anyUnits = fc.record({
  distance: fc.constantFrom(...UNIT_CHOICES.distance),
  volume: fc.constantFrom(...UNIT_CHOICES.volume),
  mass: fc.constantFrom(...UNIT_CHOICES.mass),
  temperature: fc.constantFrom(...UNIT_CHOICES.temperature),
  length: fc.constantFrom(...UNIT_CHOICES.length),
  pressure: fc.constantFrom(...UNIT_CHOICES.pressure),
});

describe('units chosen each on its own', () => {
  const litresAndMiles = withUnit('metric', 'distance', 'mi');

  it('has litres with miles, in figures and in sentences', () => {
    expect(plain(formatLitres(20, litresAndMiles))).toBe('20 L');
    expect(plain(formatKm(160.9344, litresAndMiles))).toBe('100 mi');
    expect(plain(formatAtKm(160.9344, litresAndMiles))).toBe('mile 100');
    const parts = [{ figure: 20, unit: 'l' as const }, { text: ' at ' }, { place: 160.9344, decimals: 0 }];
    expect(plain(setIn(litresAndMiles, parts))).toBe('20 L at mile 100');
  });

  it('sets fuel use in what distance and volume make together', () => {
    // 100 mi are 160.9344 km exactly: 12.5 times 1.609344; a US gallon is 3.785411784 L.
    expect(unitOf('fuelUse', litresAndMiles)).toBe('L/100 mi');
    expect(fieldText(12.5, 'fuelUse', litresAndMiles)).toBe('20.1168');
    const gallonsAndKm = withUnit('metric', 'volume', 'US gal');
    expect(unitOf('fuelUse', gallonsAndKm)).toBe('gal/100 km');
    expect(fieldText(37.85411784, 'fuelUse', gallonsAndKm)).toBe('10');
    expect(unitOf('fuelUse', 'us')).toBe('mi/gal');
    expect(unitOf('density', withUnit('metric', 'mass', 'lb'))).toBe('lb/L');
  });

  it('calls a choice that is just a system by its name', () => {
    expect(withUnit(litresAndMiles, 'distance', 'km')).toBe('metric');
    expect(named({ ...unitsOf('us') })).toBe('us');
    expect(withUnit('imperial', 'mass', 'km')).toBe('imperial');
  });

  it('reads what was kept before units had a choice of their own, and takes nonsense for metric', () => {
    expect(unitsFromStored('us')).toBe('us');
    expect(unitsFromStored('imperial')).toBe('imperial');
    for (const none of [null, '', 'nautical', '{', '[]', 'null', '{"distance":"league"}'])
      expect(unitsFromStored(none)).toBe('metric');
  });

  it('is kept and read back as it was', () => {
    fc.assert(
      fc.property(anyUnits, (units) => {
        expect(unitsOf(unitsFromStored(storedUnits(named(units))))).toEqual(units);
      }),
    );
  });

  it('reads what a field shows of a typed figure back to the same metric value, to the last digit', () => {
    const figures = fc.integer({ min: 1, max: 99_999 }).map((whole) => whole / 100);
    const kinds = fc.constantFrom('volume', 'distance', 'fuelUse', 'mass', 'length', 'pressure', 'celsius');
    fc.assert(
      fc.property(figures, kinds, anyUnits, (typed, kind, units: UnitSystem) => {
        const once = readTyped(String(typed), kind as 'volume', units);
        if (!once.ok) throw new Error(once.why);
        const shown = fieldText(once.value, kind as 'volume', units);
        expect(readTyped(shown, kind as 'volume', units)).toEqual(once);
      }),
    );
  });
});
