import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Crew, Heat, Person, Pet, UseLevel } from '../../../server/contract/crew.ts';
import type { CrewUse } from '../../../server/core/crew/needs/crew-use.ts';
import { gapsOf } from '../../../server/core/gaps/gaps-of.ts';
import { VERDICT_RANK } from '../../../server/core/gaps/verdict.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { courseOf, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';
import { crewUseOf, rigOf } from './crews.ts';

const RUNS = { numRuns: 60 };
const ENDS = ['low', 'typical', 'high'] as const;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const level = fc.constantFrom<UseLevel>('emergency', 'basic', 'careful', 'plenty');
const person: fc.Arbitrary<Person> = fc.record(
  {
    level,
    drinking: within(0.5, 10),
    washing: within(0, 20),
    shower: within(0, 20),
    count: fc.integer({ min: 1, max: 5 }),
  },
  { requiredKeys: [] },
);
const pet: fc.Arbitrary<Pet> = fc.record({ kind: fc.constantFrom('dog', 'cat'), kg: within(1, 80) });
const work = fc.record({
  sun: fc.constantFrom<NonNullable<Heat['sun']>>('shade', 'some', 'full'),
  work: fc.constantFrom<NonNullable<Heat['work']>>('easy', 'moderate', 'hard'),
  workHoursPerDay: within(0, 16),
});
const crew: fc.Arbitrary<Crew> = fc.record(
  {
    people: fc.array(person, { minLength: 1, maxLength: 4 }),
    pets: fc.array(pet, { maxLength: 3 }),
    heat: fc.tuple(work, within(-5, 45)).map(([rest, wbgtC]) => ({ ...rest, wbgtC })),
    observedLitresPerDay: within(2, 80),
    vehicleLitresPerDay: within(0, 10),
    lossPercent: within(0, 30),
    washingAtSource: fc.boolean(),
  },
  { requiredKeys: ['people'] },
);

const atLeast = (more: CrewUse, less: CrewUse, grade: 'total' | 'drinking') => {
  for (const end of ENDS) {
    expect(more[grade][end]).toBeGreaterThanOrEqual(less[grade][end] * (1 - 1e-12) - 1e-12);
  }
};

describe('the water that a crew uses', () => {
  test('should never be less when it is hotter, drinking grade neither', () => {
    fc.assert(
      fc.property(crew, work, within(-5, 45), within(0, 20), (one, rest, wbgtC, hotter) => {
        const mild = crewUseOf({ ...one, heat: { ...rest, wbgtC } });
        const hot = crewUseOf({ ...one, heat: { ...rest, wbgtC: Math.min(45, wbgtC + hotter) } });
        atLeast(hot, mild, 'total');
        atLeast(hot, mild, 'drinking');
        const { heat: _heat, ...untold } = one;
        atLeast(mild, crewUseOf(untold), 'drinking');
      }),
      RUNS,
    );
  });

  test('should never be less at a higher temperature or humidity', () => {
    fc.assert(
      fc.property(
        work,
        within(10, 50),
        within(0, 100),
        within(0, 8),
        within(0, 30),
        (rest, t, rh, dt, drh) => {
          const at = (temperatureC: number, humidityPercent: number) =>
            crewUseOf({ people: [{}], heat: { ...rest, temperatureC, humidityPercent } });
          atLeast(at(t + dt, rh), at(t, rh), 'total');
          atLeast(at(t, Math.min(100, rh + drh)), at(t, rh), 'total');
        },
      ),
      RUNS,
    );
  });

  test('should never be less for more hours of work', () => {
    fc.assert(
      fc.property(crew, work, within(0, 45), within(0, 8), (one, rest, wbgtC, more) => {
        const heat = { ...rest, wbgtC };
        const longer = { ...heat, workHoursPerDay: rest.workHoursPerDay + more };
        atLeast(crewUseOf({ ...one, heat: longer }), crewUseOf({ ...one, heat }), 'total');
      }),
      RUNS,
    );
  });

  test('should never be less for one person or one pet more', () => {
    fc.assert(
      fc.property(crew, person, pet, (one, another, animal) => {
        const less = crewUseOf(one);
        atLeast(crewUseOf({ ...one, people: [...one.people, another] }), less, 'total');
        atLeast(crewUseOf({ ...one, pets: [...(one.pets ?? []), animal] }), less, 'total');
      }),
      RUNS,
    );
  });

  test('should be the sum of its parts, at each end, and of both grades', () => {
    fc.assert(
      fc.property(crew, (one) => {
        const use = crewUseOf(one);
        for (const end of ENDS) {
          const sum = use.uses.reduce((total, part) => total + part.litresPerDay[end], 0);
          expect(sum).toBeCloseTo(use.total[end], 9);
          expect(use.drinking[end] + use.washing[end]).toBeCloseTo(use.total[end], 9);
        }
      }),
      RUNS,
    );
  });

  test('should be what was observed, where that is told', () => {
    fc.assert(
      fc.property(crew, within(1, 100), (one, observed) => {
        const { total } = crewUseOf({ ...one, observedLitresPerDay: observed });
        expect(total).toEqual({ low: observed / 1.5, typical: observed, high: observed * 1.5 });
      }),
      RUNS,
    );
  });
});

describe('the grades of a gap', () => {
  const tanks = fc
    .array(
      fc.record({
        litres: within(10, 200),
        grade: fc.constantFrom<'any' | 'drinking' | 'washing'>('any', 'drinking', 'washing'),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((list) => list.map((tank, index) => ({ name: `tank ${index}`, ...tank })));
  const lengths = fc.array(within(20_000, 900_000), { minLength: 1, maxLength: 4 });

  const gapsFor = (
    one: Crew,
    list: { name: string; litres: number }[],
    lengthsM: number[],
    startShare: number,
  ) => {
    const rigFile = rigOf(one, { tanks: list });
    const lengthM = lengthsM.reduce((sum, length) => sum + length, 0);
    let atM = 0;
    const passings = lengthsM.slice(0, -1).map((length) => {
      atM += length;
      return passingEdge(atM);
    });
    const course = courseOf({ commodity: 'water', rigFile, lengthM });
    const startL = course.rig.water.drawableL * startShare;
    return gapsOf(course, [startEdge, ...passings, endEdge(lengthM)], startL);
  };

  test('should add up to the gap: needs, reserves, arrivals, margins', () => {
    fc.assert(
      fc.property(crew, tanks, lengths, within(0, 1), (one, list, lengthsM, share) => {
        for (const gap of gapsFor(one, list, lengthsM, share)) {
          const { drinking, washing } = gap.grades!;
          for (const key of ['needL', 'reserveL', 'arriveL', 'marginL'] as const) {
            expect(drinking[key] + washing[key]).toBeCloseTo(gap[key], 6);
          }
        }
      }),
      RUNS,
    );
  });

  test('should never leave the verdict better than that of drinking grade, nor without extra where it is short', () => {
    fc.assert(
      fc.property(crew, tanks, lengths, within(0, 1), (one, list, lengthsM, share) => {
        for (const gap of gapsFor(one, list, lengthsM, share)) {
          const { drinking } = gap.grades!;
          expect(VERDICT_RANK[gap.verdict]).toBeLessThanOrEqual(VERDICT_RANK[drinking.verdict]);
          expect(gap.extraL).toBeGreaterThanOrEqual(-drinking.marginL - 1e-9);
          expect(gap.extraL).toBeGreaterThanOrEqual(-gap.marginL - 1e-9);
        }
      }),
      RUNS,
    );
  });

  test('should never get a better verdict from a tank that is kept for washing', () => {
    fc.assert(
      fc.property(crew, tanks, lengths, (one, list, lengthsM) => {
        const kept = list.map((tank, index) => (index === 0 ? { ...tank, grade: 'washing' as const } : tank));
        const freely = list.map((tank, index) => (index === 0 ? { ...tank, grade: 'any' as const } : tank));
        const bound = gapsFor(one, kept, lengthsM, 1);
        gapsFor(one, freely, lengthsM, 1).forEach((gap, index) => {
          expect(VERDICT_RANK[bound[index]!.verdict]).toBeLessThanOrEqual(VERDICT_RANK[gap.verdict]);
          expect(bound[index]!.turnBackM ?? -1).toBeLessThanOrEqual((gap.turnBackM ?? -1) + 1e-9);
        });
      }),
      RUNS,
    );
  });

  test('should be those of the plain rig where no container is kept for one grade and the reserve is told in litres', () => {
    fc.assert(
      fc.property(lengths, within(5, 40), (lengthsM, rate) => {
        const litresPerDay = { low: rate / 2, typical: rate * 0.8, high: rate };
        const water = { tanks: [{ name: 'tank', litres: 120 }], reserve: { litres: 20 } };
        const plainRig = rigOf({ people: [{}] }, { ...water, litresPerDay });
        const { crew: _crew, ...plain } = plainRig;
        const lengthM = lengthsM.reduce((sum, length) => sum + length, 0);
        const edges = [startEdge, endEdge(lengthM)];
        const gapOf = (rigFile: typeof plainRig) =>
          gapsOf(courseOf({ commodity: 'water', rigFile, lengthM }), edges, 120)[0]!;
        const graded = gapOf(plainRig);
        const bare = gapOf(plain);
        expect(bare.grades).toBeNull();
        for (const key of [
          'verdict',
          'needL',
          'reserveL',
          'arriveL',
          'marginL',
          'extraCans',
          'levels',
        ] as const) {
          expect(graded[key]).toEqual(bare[key]);
        }
        for (const key of ['extraL', 'turnBackM', 'reserveFromM', 'runsDryM'] as const) {
          expect(graded[key] ?? -1).toBeCloseTo(bare[key] ?? -1, 6);
        }
      }),
      RUNS,
    );
  });
});

test('a rig settled once is settled for good, its crew too', () => {
  fc.assert(
    fc.property(crew, (one) => {
      const { rig, settled } = settleRig(rigOf(one));
      expect(settleRig(settled).rig).toEqual(rig);
    }),
    RUNS,
  );
});
