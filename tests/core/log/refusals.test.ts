import { describe, expect, it } from 'vitest';
import { problemLine } from '../../../server/core/input/problem.ts';
import { csvOf, refusal } from './learn-helpers.ts';

const FUEL = 'odometer_km,litres,full';
const fills = (count: number) => Array.from({ length: count }, (_, index) => `${1000 + 500 * index},50,full`);
const WATER = 'date,litres,people,days';
const days = (count: number) => Array.from({ length: count }, (_, index) => `2026-04-0${index + 1},20,2,1`);

describe('a log of fill-ups that cannot be used', () => {
  it.each([
    [
      'goes back',
      csvOf(FUEL, ...fills(6), '3400,50,full'),
      'line 8, odometer_km',
      '3400 after 3500 in line 7',
    ],
    [
      'goes back to before its beginning',
      csvOf(FUEL, ...fills(6), '500,50,full'),
      'line 8, odometer_km',
      '500 after 3500 in line 7',
    ],
    ['has a line twice', csvOf(FUEL, ...fills(6), '3500,50,full'), 'line 8', 'the same fill-up as in line 7'],
    ['has no odometer somewhere', csvOf(FUEL, '1000,50,full', ',50,full'), 'line 3, odometer_km', 'nothing'],
    ['does not say full or part', csvOf(FUEL, '1000,50,'), 'line 2, full', 'nothing'],
    ['says something else for full', csvOf(FUEL, '1000,50,brim'), 'line 2, full', '"brim"'],
    ['has litres below nothing', csvOf(FUEL, '1000,-5,full'), 'line 2, litres', '"-5"'],
    ['has no litres but zero', csvOf(FUEL, '1000,0,full'), 'line 2, litres', '"0"'],
    ['has words for litres', csvOf(FUEL, '1000,fifty,full'), 'line 2, litres', '"fifty"'],
    ['has thousands', csvOf(FUEL, '"1,000",50,full'), 'line 2, odometer_km', '"1,000"'],
    ['has exponents', csvOf(FUEL, '1e3,50,full'), 'line 2, odometer_km', '"1e3"'],
    [
      'has a surface of no name',
      csvOf(`${FUEL},surface`, '1000,50,full,dunes'),
      'line 2, surface',
      '"dunes"',
    ],
    ['has a mass of no vehicle', csvOf(`${FUEL},mass_kg`, '1000,50,full,3'), 'line 2, mass_kg', '"3"'],
    ['uses more than anything', csvOf(FUEL, '1000,50,full', '1001,50,full'), 'lines 2 to 3', '5000 l/100 km'],
    ['has more cells than headings', csvOf(FUEL, '1000,50,5,full'), 'line 2', '4 cells'],
    ['leaves a quote open', csvOf(FUEL, '1000,50,full', '1500,"50,full'), 'line 3', 'never closed'],
    ['has a quote inside a cell', csvOf(FUEL, '1000,5"0,full'), 'line 2', 'a double quote inside a cell'],
    ['goes on after a quote', csvOf(FUEL, '1000,"50"5,full'), 'line 2', 'a double quote inside a cell'],
    ['has too few intervals', csvOf(FUEL, ...fills(4)), null, '3 intervals from full tank to full tank'],
    ['is a header alone', csvOf(FUEL), null, '0 intervals'],
    ['is empty', '\n\n', null, 'an empty file'],
  ])('%s', (_name, text, place, came) => {
    const problem = refusal(text);
    expect(problem).toMatchObject({ code: 'log-invalid', source: 'log.csv', place });
    expect(problem.came).toContain(came);
    expect(problemLine(problem)).not.toContain('\n');
  });

  it('says how many full tanks are missing, and what was left out', () => {
    const few = refusal(
      csvOf(`${FUEL},missed`, ...fills(4).map((line) => `${line},`), '3000,50,full,yes', '3100,5,part,'),
    );
    expect(few.came).toBe(
      '3 intervals from full tank to full tank (lines 2 to 3, lines 3 to 4, lines 4 to 5); left out: lines 5 to 6 from full to full, but a fill-up before line 6 is missing; line 7 filled after the last full tank',
    );
    expect(few.remedy).toContain('Fill up 2 more times');
    expect(refusal(csvOf(FUEL)).remedy).toContain('Fill up 6 more times');
    expect(refusal(csvOf(FUEL, '1000,50,full')).remedy).toContain('Fill up 5 more times');
  });

  it('stays one short line when a long log has nothing of the surface that is asked for', () => {
    const problem = refusal(csvOf(FUEL, ...fills(200)), 'sand');
    expect(problem.came).toContain('lines 2 to 3 not on sand throughout; ');
    expect(problem.came).toContain('; 194 more');
    expect(problem.came.length).toBeLessThan(400);
  });

  it.each([
    ['odometer,litres,full', '"odometer"', 'odometer_km or odometer_mi'],
    ['odometer_km,gallons,full', '"gallons"', 'gal_us (3.785 l) or gal_imp (4.546 l)'],
    ['odometer_km,litres,full,mass', '"mass"', 'mass_kg or mass_lb'],
    ['odometer_km,full', 'litres (or gal_us, gal_imp)', 'odometer_km'],
    ['odometer_km,litres', 'without full', 'full'],
    ['odometer_km,litres,full,gal_us', '"gal_us" beside "litres"', 'one column of each kind'],
    ['when,what', '"when", "what"', 'odometer_km,litres,full for fuel'],
  ])('has the heading %s', (header, came, expected) => {
    const problem = refusal(csvOf(header, '1,2'));
    expect(problem).toMatchObject({ code: 'log-invalid', place: 'line 1' });
    expect(problem.came).toContain(came);
    expect(problem.expected).toContain(expected);
  });

  it('does not guess what 12.345 between semicolons means', () => {
    const problem = refusal(csvOf('odometer_km;litres;full', '12.345;50;full'));
    expect(problem).toMatchObject({ place: 'line 2, odometer_km', came: '"12.345"' });
    expect(problem.remedy).toContain('write 12345, or 12.3450');
    const mixed = refusal(csvOf('odometer_km;litres;full', '12.345,5;50;full', '12800;50,5;full'));
    expect(mixed.remedy).toContain('plain digits with a comma');
  });
});

describe('a water log that cannot be used', () => {
  it.each([
    ['has too few lines', csvOf(WATER, ...days(4)), null, '4 lines'],
    ['has a line twice', csvOf(WATER, ...days(5), '2026-04-05,20,2,1'), 'line 7', 'the same as line 6'],
    ['has a day that is none', csvOf(WATER, '2026-02-30,20,2,1'), 'line 2, date', '"2026-02-30"'],
    ['has a date of another form', csvOf(WATER, '1.4.2026,20,2,1'), 'line 2, date', '"1.4.2026"'],
    ['has half a person', csvOf(WATER, '2026-04-01,20,1.5,1'), 'line 2, people', '"1.5"'],
    ['has nobody', csvOf(WATER, '2026-04-01,20,0,1'), 'line 2, people', '"0"'],
    ['has no days', csvOf(WATER, '2026-04-01,20,2,'), 'line 2, days', 'nothing'],
    ['has no litres', csvOf(WATER, '2026-04-01,,2,1'), 'line 2, litres', 'nothing'],
    ['has no column for days', csvOf('date,litres,people', '2026-04-01,20,2'), 'line 1', 'without days'],
    [
      'uses more than any rig may',
      csvOf(WATER, ...days(5).map((day) => day.replace(',20,', ',2002,'))),
      null,
      '2002 l a day',
    ],
  ])('%s', (_name, text, place, came) => {
    const problem = refusal(text);
    expect(problem).toMatchObject({ code: 'log-invalid', source: 'log.csv', place });
    expect(problem.came).toContain(came);
  });

  it('does not take the option of the other kind of log', () => {
    expect(refusal(csvOf(WATER, ...days(5)), 'sand').place).toBe('surface');
    expect(refusal(csvOf(FUEL, ...fills(6)), null, 2).place).toBe('people');
  });
});
