import { describe, expect, test } from 'vitest';
import { checkRigValue, checkTripValue } from '../../../../server/app/input/plan-input.ts';
import { problemLine } from '../../../../server/core/input/problem.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { rigOf } from '../crews.ts';

const { litresPerDay: _litresPerDay, ...WATER } = EXAMPLE_RIG.water;
const lineOf = (rig: unknown): string => {
  const outcome = checkRigValue(rig, 'rig.yaml');
  return outcome.ok ? 'ok' : problemLine(outcome.problem);
};
const withCrew = (crew: unknown, water: object = {}) => ({
  ...EXAMPLE_RIG,
  water: { ...WATER, ...water },
  crew,
});

describe('a crew from outside', () => {
  test('is taken with nothing but its number of people', () => {
    expect(lineOf(withCrew({ people: [{}] }))).toBe('ok');
    expect(
      lineOf(withCrew({ people: [{ count: 3, level: 'plenty' }], pets: [{ kind: 'cat', kg: 4 }] })),
    ).toBe('ok');
    expect(lineOf(rigOf({ people: [{}] }))).toBe('ok');
  });

  test.each<[string, unknown, object, string]>([
    ['neither litres a day nor a crew', undefined, {}, '/water/litresPerDay: nothing; expected'],
    ['nobody', { people: [] }, {}, '/crew/people: a list of 0; expected 1 to 60'],
    ['an unknown level', { people: [{ level: 'lavish' }] }, {}, '/crew/people/0/level: "lavish"'],
    ['an unknown key', { people: [{ drink: 3 }] }, {}, '/crew/people/0/drink'],
    ['negative litres', { people: [{ cooking: -1 }] }, {}, '/crew/people/0/cooking: -1; expected'],
    ['absurd litres', { people: [{ drinking: 300 }] }, {}, '/crew/people/0/drinking: 300; expected'],
    [
      'nothing to drink',
      { people: [{}, { drinking: 0 }] },
      {},
      '/crew/people/1/drinking: 0 l a day; expected',
    ],
    [
      'numbers out of order',
      { people: [{ washing: { low: 3, typical: 2, high: 4 } }] },
      {},
      '/crew/people/0/washing: low 3, typical 2, high 4; expected low <= typical <= high',
    ],
    ['a pet without mass', { people: [{}], pets: [{ kind: 'dog' }] }, {}, '/crew/pets/0/kg'],
    [
      'a pet of no mass',
      { people: [{}], pets: [{ kind: 'dog', kg: 0 }] },
      {},
      '/crew/pets/0/kg: 0; expected',
    ],
    [
      'two observed figures',
      { people: [{}], observedLitresPerDay: 12 },
      { litresPerDay: 14 },
      '/crew/observedLitresPerDay: an observed figure beside /water/litresPerDay; expected one of the two',
    ],
    [
      'heat of nothing',
      { people: [{}], heat: { sun: 'full' } },
      {},
      '/crew/heat: neither wbgtC nor temperatureC',
    ],
    [
      'no humidity',
      { people: [{}], heat: { temperatureC: 40 } },
      {},
      '/crew/heat: temperatureC without humidity',
    ],
    [
      'no temperature',
      { people: [{}], heat: { humidityPercent: 40 } },
      {},
      '/crew/heat: humidityPercent without',
    ],
    [
      'WBGT and humidity',
      { people: [{}], heat: { wbgtC: 30, humidityPercent: 40 } },
      {},
      '/crew/heat: wbgtC and humidityPercent; expected',
    ],
    ['absurd heat', { people: [{}], heat: { wbgtC: 60 } }, {}, '/crew/heat/wbgtC: 60; expected'],
    [
      '25 hours of work',
      { people: [{}], heat: { wbgtC: 30, workHoursPerDay: 25 } },
      {},
      '/crew/heat/workHoursPerDay: 25',
    ],
    ['losses of half and more', { people: [{}], lossPercent: 60 }, {}, '/crew/lossPercent: 60; expected'],
    [
      'a graded tank without a crew',
      undefined,
      {
        litresPerDay: 14,
        tanks: [
          { name: 'one', litres: 50 },
          { name: 'two', litres: 30, grade: 'washing' },
        ],
      },
      '/water/tanks/1/grade: a container kept for one grade; expected a crew',
    ],
    [
      'graded cans without a crew',
      undefined,
      { litresPerDay: 14, cans: { litres: 20, owned: 2, grade: 'drinking' } },
      '/water/cans/grade: a container kept for one grade; expected a crew',
    ],
  ])('is refused in one line with the key’s path: %s', (_, crew, water, line) => {
    const rig = withCrew(crew, water);
    const text = lineOf(crew === undefined ? { ...rig, crew: undefined } : rig);
    expect(text).toContain(`rig.yaml, ${line}`);
    expect(text).not.toContain('\n');
  });
});

test('fuel tanks have no grade', () => {
  const fuel = { ...EXAMPLE_RIG.fuel, tanks: [{ name: 'main', litres: 90, grade: 'drinking' }] };
  expect(lineOf({ ...EXAMPLE_RIG, fuel })).toContain('rig.yaml, /fuel/tanks/0/grade');
});

test.each([
  [{ alarmHours: -1 }, '/alarmHours: -1; expected'],
  [{ helpHours: 2000 }, '/helpHours: 2000; expected'],
  [{ washingSources: [''] }, '/washingSources/0'],
])('a trip is refused for %j', (trip, line) => {
  const outcome = checkTripValue(trip, 'trip.yaml', null);
  expect(outcome.ok ? 'ok' : problemLine(outcome.problem)).toContain(`trip.yaml, ${line}`);
});
