import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitSystem } from '../../../web/units/units.ts';
import { namesIn, sayIn } from '../../../web/words/say-in-units.ts';
import { sampleReply } from '../sample-reply.ts';

const said = (text: string, units: UnitSystem = 'us', names: string[] = []) =>
  sayIn(units, names)(text).replaceAll('\u00a0', ' ');

describe('a sentence in US units', () => {
  // Miles of 1.609344 km, US gallons of 3.785411784 l, pounds of 0.45359237 kg, feet of 0.3048 m: see web/units/units.ts.
  it.each([
    ['From Reed Cross (km 212) on.', 'From Reed Cross (mile 132) on.'],
    ['Turning round at km 812.4, back.', 'Turning round at mile 504.8, back.'],
    ['between km 300 to 420.', 'between mile 186 to 261.'],
    ['31.4 l of fuel are missing', '8.3 gal of fuel are missing'],
    ['With 60 l laid beforehand', 'With 15.9 gal laid beforehand'],
    ['1.4 l a day less', '0.37 gal a day less'],
    ['low use (17 l/100 km).', 'low use (13.8 mi/gal).'],
    ['at 1,200 km', 'at 746 mi'],
    ['8.0 km there and back', '5 mi there and back'],
    ['5 to 12 km off', '3.1 to 7.5 mi off'],
    ['43 kg more when they are full', '95 lb more when they are full'],
    ['43 kg.', '95 lb.'],
    ['climbs 1240 m in all', 'climbs 4,068 ft in all'],
    ['35 km/h slow, 2 l/min', '22 mph slow, 0.53 gal/min'],
    ['\u221240 l and -40 l', '\u221210.6 gal and \u221210.6 gal'],
    ['0.1 l of it', '0.03 gal of it'],
    ['km 300 and 40 l, km 700 to 40 l', 'mile 186 and 10.6 gal, mile 435 to 10.6 gal'],
    ['wait 2 days from km\u00a0300', 'wait 2 days from mile 186'],
  ])('%s', (metric, us) => {
    expect(said(metric)).toBe(us);
  });

  it('has a difference of degrees in the degrees of the reader', () => {
    expect(said('5 °C hotter than told (24 l a day)')).toBe('9 °F hotter than told (6.3 gal a day)');
    expect(said('2.5 °C hotter', 'imperial')).toBe('2.5 °C hotter');
  });

  it('has imperial gallons where the reader has them', () => {
    expect(said('20 l and 17 l/100 km', 'imperial')).toBe('4.4 gal and 16.6 mi/gal');
  });

  it.each([
    'boils at 95 °C',
    'node/12 km and way/7 l',
    'A4 l, 3x40 l',
    'Bore 12 km Camp is dry.',
    'the tank "20 l jerry" loses all its water',
    '10 mm, 10 min, 10 mg/l, 12 m², 100-200 km',
    '2 more cans, 9 hours a day, 10 % more use',
    'the first km without cover',
  ])('leaves alone: %s', (text) => {
    expect(said(text)).toBe(text);
  });

  it('leaves a name alone that holds a quantity, and the same quantity outside it not', () => {
    const names = ['Camp 40 km', 'km 312 roadhouse', '40', 'Well (2 l/min)'];
    expect(said('From Camp 40 km (km 40) 40 km to km 312 roadhouse (km 312)', 'us', names)).toBe(
      'From Camp 40 km (mile 25) 25 mi to km 312 roadhouse (mile 194)',
    );
    expect(said('Well (2 l/min) gives 2 l/min', 'us', names)).toBe('Well (2 l/min) gives 0.53 gal/min');
  });

  it('takes the names from the analysis', () => {
    const { analysis } = sampleReply();
    const [passing] = analysis.passings;
    passing!.name = 'Post 9 km';
    expect(said('Post 9 km (km 9)', 'us', namesIn(analysis))).toBe('Post 9 km (mile 5.6)');
  });
});

describe('a sentence in metric', () => {
  it('stays as it came', () => {
    fc.assert(fc.property(fc.string(), (text) => sayIn('metric')(text) === text));
    expect(sayIn('metric')('31.4 l at km 212')).toBe('31.4 l at km 212');
  });
});

describe('any sentence', () => {
  it('keeps its words, and each quantity within half a unit of its last figure', () => {
    const words = fc.constantFrom('carry', 'at Reed Cross', 'node/5', 'with the reserve', '(ours)');
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 99_999 }), words, (before, tenths, after) => {
        const litres = tenths / 10;
        const [, figure] = /^(?:.*) ([\d.,]+) gal (?:.*)$/.exec(said(`${before} ${litres} l ${after}`)) ?? [];
        const shown = Number(figure?.replaceAll(',', ''));
        expect(Math.abs(shown - litres / 3.785411784)).toBeLessThanOrEqual(0.05 + 1e-9);
        expect(said(`${before} ${litres} l ${after}`)).toBe(`${before} ${figure} gal ${after}`);
      }),
    );
  });
});
