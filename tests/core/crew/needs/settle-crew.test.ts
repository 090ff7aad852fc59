import { describe, expect, it } from 'vitest';
import type { Crew } from '../../../../server/contract/crew.ts';
import { settleCrew } from '../../../../server/core/crew/needs/settle-crew.ts';
import type { Assumption } from '../../../../server/core/quantity/assumption.ts';
import type { UseRange } from '../../../../server/core/quantity/use-range.ts';

const CAREFUL = { phrase: 'word', facts: { word: 'careful' } };
const LEVEL_SOURCE = { phrase: 'level-source', facts: { level: 'careful' } };
const OURS = { phrase: 'ours', facts: {} };
const NO_LOSSES = [
  '/crew/lossPercent',
  { phrase: 'percent', facts: { percent: 0 } },
  { phrase: 'within-typical-and-high', facts: {} },
];
const NO_VEHICLE = [
  '/crew/vehicleLitresPerDay',
  { phrase: 'none', facts: {} },
  { phrase: 'not-told', facts: {} },
];
const CARRIED = [
  '/crew/washingAtSource',
  { phrase: 'no', facts: {} },
  { phrase: 'all-washing-carried', facts: {} },
];

function settle(file: Crew, ofRig: UseRange | null = null) {
  const assumptions: Assumption[] = [];
  const { settled, use } = settleCrew(file, ofRig, (path, value, why) =>
    assumptions.push({ path, value, why }),
  );
  return { settled, use, told: assumptions.map(({ path, value, why }) => [path, value, why]) };
}

describe('what a crew leaves out', () => {
  it('is told one by one, with what is taken and why', () => {
    const { settled, told } = settle({ people: [{ count: 2 }] });
    expect(told).toEqual([['/crew/people/0/level', CAREFUL, LEVEL_SOURCE], NO_VEHICLE, NO_LOSSES, CARRIED]);
    expect(settled).toEqual({
      people: [{ count: 2, level: 'careful' }],
      vehicleLitresPerDay: 0,
      lossPercent: 0,
      washingAtSource: false,
    });
  });

  it('of the heat is the sun that makes thirstiest, moderate work, four hours of it', () => {
    const heat = { temperatureC: 38, humidityPercent: 15 };
    const { settled, told } = settle({ people: [{ count: 1, level: 'basic' }], heat });
    expect(told.slice(0, 4)).toEqual([
      ['/crew/heat/sun', { phrase: 'word', facts: { word: 'full' } }, { phrase: 'thirstiest', facts: {} }],
      ['/crew/heat/windKmPerHour', { phrase: 'kilometres-an-hour', facts: { km: 3.6 } }, OURS],
      ['/crew/heat/work', { phrase: 'word', facts: { word: 'moderate' } }, OURS],
      ['/crew/heat/workHoursPerDay', { phrase: 'hours', facts: { hours: 4 } }, OURS],
    ]);
    expect(settled.heat).toEqual({
      ...heat,
      sun: 'full',
      windKmPerHour: 3.6,
      work: 'moderate',
      workHoursPerDay: 4,
    });
  });

  it('is nothing where all is told, and what is told stays', () => {
    const file: Crew = {
      people: [{ count: 1, level: 'basic' }],
      heat: {
        temperatureC: 38,
        humidityPercent: 15,
        sun: 'shade',
        windKmPerHour: 2,
        work: 'easy',
        workHoursPerDay: 1,
      },
      vehicleLitresPerDay: 2,
      lossPercent: 5,
      washingAtSource: true,
    };
    const { settled, told } = settle(file);
    expect(told).toEqual([]);
    expect(settled).toEqual(file);
  });

  it('needs no level where every use is told, and takes half as much again for the high end of one number', () => {
    const uses = {
      drinking: 4,
      cooking: { low: 1, typical: 1.5, high: 2 },
      washingUp: 0,
      washing: 2,
      shower: 0,
    };
    const { settled, told } = settle({ people: [{ count: 1, ...uses }] });
    const high = (path: string, litres: number) => [
      `${path}/high`,
      { phrase: 'litres-a-day', facts: { litres } },
      { phrase: 'typical-times', facts: { factor: 1.5 } },
    ];
    expect(told.slice(0, 2)).toEqual([high('/crew/people/0/drinking', 6), high('/crew/people/0/washing', 3)]);
    expect(told.map(([path]) => path)).not.toContain('/crew/people/0/level');
    expect(settled.people).toEqual([{ count: 1, ...uses }]);
  });

  it('of one use needs the level still', () => {
    const { told } = settle({
      people: [{ count: 1 }, { count: 1, drinking: { low: 3, typical: 4, high: 5 } }],
    });
    expect(told.map(([path]) => path)).toEqual(
      expect.arrayContaining(['/crew/people/0/level', '/crew/people/1/level']),
    );
  });
});

describe('a figure for all aboard', () => {
  const people: Crew['people'] = [{ count: 1, level: 'basic' }];

  it('of the rig wins over the sum of the crew, and says so at its high end', () => {
    const { told, use } = settle({ people }, { low: 8, typical: 10, high: 13 });
    expect(told).toEqual([
      [
        '/crew/observedLitresPerDay',
        { phrase: 'litres-a-day-at-most', facts: { litres: 13 } },
        { phrase: 'own-figure-wins', facts: {} },
      ],
      CARRIED,
    ]);
    expect(use.total).toEqual({ low: 8, typical: 10, high: 13 });
  });

  it('observed as one number has a high end half as high again; nothing of vehicle and losses is taken then', () => {
    const { told, use } = settle({ people, observedLitresPerDay: 12 });
    expect(told).toEqual([
      [
        '/crew/observedLitresPerDay/high',
        { phrase: 'litres-a-day', facts: { litres: 18 } },
        { phrase: 'typical-times', facts: { factor: 1.5 } },
      ],
      CARRIED,
    ]);
    expect(use.total.high).toBeCloseTo(18, 9);
  });
});

describe('where a use of water comes from', () => {
  const sourceOf = (file: Crew, name: string) =>
    settle(file).use.uses.find(({ use }) => use === name)?.source;
  const pet = (kind: 'dog' | 'other', more: { litresPerDay?: number } = {}) => ({ kind, kg: 20, ...more });

  it('is a figure of the crew itself only where somebody has one', () => {
    const level = { people: [{ count: 1, level: 'basic' as const }] };
    const facts = (own: boolean) => ({ facts: { own, levels: ['basic'] } });
    expect(sourceOf(level, 'drinking')).toMatchObject(facts(false));
    const people = [...level.people, { count: 1, level: 'basic' as const, drinking: 4 }];
    expect(sourceOf({ people }, 'drinking')).toMatchObject(facts(true));
  });

  it('of pets is the figure of a dog, of another animal taken as one, or their own', () => {
    const sources = (...pets: NonNullable<Crew['pets']>) =>
      sourceOf({ people: [{ count: 1 }], pets }, 'pets');
    expect(sources(pet('dog'))).toMatchObject({ facts: { sources: ['dog'] } });
    expect(sources(pet('other'))).toMatchObject({ facts: { sources: ['as-dog'] } });
    expect(sources(pet('dog', { litresPerDay: 2 }))).toMatchObject({ facts: { sources: ['own'] } });
    expect(sources()).toBeUndefined();
  });
});
