import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bare, figure, fixed, placeAt, rounded } from '../../../server/words/parts/figures.ts';
import { metricText } from '../../../server/words/parts/metric.ts';
import { type Part, parts, type Unit } from '../../../server/words/parts/part.ts';
import type { UnitSystem } from '../../../web/units/units.ts';
import { inUnits, saidIn } from '../../../web/words/said.ts';

const said = (of: Part[], units: UnitSystem = 'us') =>
  saidIn(units, { text: metricText(of), parts: of }).replaceAll('\u00a0', ' ');

describe('a sentence in US units', () => {
  // Miles of 1.609344 km, US gallons of 3.785411784 L, pounds of 0.45359237 kg, feet of 0.3048 m: see web/units/conversions.ts.
  it.each<[Part[], string]>([
    [parts`From Reed Cross (${placeAt(212_000)}) on.`, 'From Reed Cross (mile 132) on.'],
    [parts`Turning round at ${placeAt(812_400)}, back.`, 'Turning round at mile 504.8, back.'],
    [parts`${figure(31.4, 'l')} of fuel are missing`, '8.3 gal of fuel are missing'],
    [parts`With ${figure(60, 'l')} laid beforehand`, 'With 15.9 gal laid beforehand'],
    [parts`${figure(1.4, 'l')} a day less`, '0.37 gal a day less'],
    [parts`low use (${figure(17, 'l/100 km')}).`, 'low use (13.8 mi/gal).'],
    [parts`at ${figure(1200, 'km')}`, 'at 746 mi'],
    [parts`${fixed(8, 'km')} there and back`, '5 mi there and back'],
    [parts`${bare(figure(5, 'km'))} to ${figure(12, 'km')} off`, '3.1 to 7.5 mi off'],
    [parts`${figure(43, 'kg')} more when they are full`, '95 lb more when they are full'],
    [parts`climbs ${rounded(1240.2, 'm', 0)} in all`, 'climbs 4,068 ft in all'],
    [parts`${figure(35, 'km/h')} slow, ${figure(2, 'l')}/min`, '22 mph slow, 0.53 gal/min'],
    [parts`${figure(-40, 'l')}`, '\u221210.6 gal'],
    [parts`${figure(0.1, 'l')} of it`, '0.03 gal of it'],
    [parts`WBGT ${bare(figure(20, '°C'))} to ${figure(50, '°C')}`, 'WBGT 68 to 122 °F'],
    [parts`nights of ${figure(-12, '°C')}`, 'nights of 10 °F'],
    [parts`${{ ...figure(5, '°C'), difference: true }} hotter`, '9 °F hotter'],
    [parts`${figure(0.1 + 0.2, 'kg')}`, '0.661 lb'],
  ])('%j', (metric, us) => {
    expect(said(metric)).toBe(us);
  });

  it('has imperial gallons and degrees Celsius where the reader has them', () => {
    expect(said(parts`${figure(20, 'l')} and ${figure(17, 'l/100 km')}`, 'imperial')).toBe(
      '4.4 gal and 16.6 mi/gal',
    );
    expect(
      said(parts`${figure(-12, '°C')}, ${{ ...figure(2.5, '°C'), difference: true }} hotter`, 'imperial'),
    ).toBe('\u221212 °C, 2.5 °C hotter');
  });

  it('leaves alone what all readers have alike', () => {
    const alike = parts`${figure(9, 'h')}, ${figure(5, 'min')}, ${figure(2.5, 'days')}, ${figure(10, '%')}, ${figure(3, 'count')}`;
    expect(said(alike)).toBe('9 h, 5 min, 2.5 days, 10 %, 3');
  });

  it('leaves names alone, whatever figures they have', () => {
    const named = parts`From ${'12 km Camp'} (${placeAt(40_000)}) ${figure(40, 'km')} to ${'km 312 roadhouse'}: the tank "${'20 l jerry'}" loses ${figure(20, 'l')}`;
    expect(said(named)).toBe(
      'From 12 km Camp (mile 25) 25 mi to km 312 roadhouse: the tank "20 l jerry" loses 5.3 gal',
    );
  });

  it('leaves out tags, with their brackets', () => {
    const tagged: Part[] = [
      { text: 'Not public' },
      { text: ' (access=private)', exact: true },
      { text: ': ask.' },
    ];
    expect(said(tagged, 'metric')).toBe('Not public: ask.');
    expect(metricText(tagged)).toBe('Not public (access=private): ask.');
  });

  it('shows no more than three decimals of a figure that was not rounded', () => {
    expect(said(parts`${figure(0.1 + 0.2, 'kg')}`, 'metric')).toBe('0.3 kg');
  });

  it('stands as it came where it has no figures', () => {
    expect(inUnits('us', 'Bore 12 km Camp is dry.')).toBe('Bore 12 km Camp is dry.');
  });
});

const UNITS: readonly Unit[] = [
  'km',
  'm',
  'l',
  'kg',
  'l/100 km',
  'km/h',
  '°C',
  'days',
  'h',
  'min',
  '%',
  'count',
];
const anyPart = fc.oneof(
  fc.record({ text: fc.constantFrom('carry', ' at ', 'Reed Cross', ': ', 'node/5.') }),
  fc.record({ figure: fc.integer({ min: -99_999, max: 99_999 }), unit: fc.constantFrom(...UNITS) }),
  fc.record({ place: fc.integer({ min: 0, max: 99_999 }) }),
);

describe('any sentence', () => {
  it('reads in metric as the command line says it', () => {
    fc.assert(
      fc.property(fc.array(anyPart), (all) => {
        const shown = saidIn('metric', { text: metricText(all), parts: all });
        const signs = /[\s\u00a0,]/g;
        const bareText = (text: string) =>
          text.replaceAll('-', '\u2212').replace(signs, '').replaceAll('L', 'l');
        expect(bareText(shown)).toBe(bareText(metricText(all)));
      }),
    );
  });

  it('keeps its words, and each quantity within half a unit of its last figure', () => {
    const words = fc.constantFrom('carry', 'at Reed Cross', 'node/5 km', 'with the reserve', '(ours)');
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 99_999 }), words, (before, tenths, after) => {
        const litres = tenths / 10;
        const us = said(parts`${before} ${figure(litres, 'l')} ${after}`);
        const [, shown] = /^(?:.*) ([\d.,]+) gal (?:.*)$/.exec(us) ?? [];
        expect(Math.abs(Number(shown?.replaceAll(',', '')) - litres / 3.785411784)).toBeLessThanOrEqual(
          0.05 + 1e-9,
        );
        expect(us).toBe(`${before} ${shown} gal ${after}`);
      }),
    );
  });
});
