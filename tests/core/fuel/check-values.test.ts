import { describe, expect, test } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { fuelProfiles } from '../../../server/core/fuel/course/fuel-profiles.ts';
import { ARCTIC_CLASSES, coldCautions } from '../../../server/core/fuel/engine/cold.ts';
import {
  fillPercentAt,
  fillPercentByBoilingPoint,
  growthL,
} from '../../../server/core/fuel/engine/filling.ts';
import { FUEL_KINDS, REGULATORY_MJ_PER_L } from '../../../server/core/fuel/engine/kinds.ts';
import { liftL, liftMJ } from '../../../server/core/fuel/engine/lift.ts';
import {
  dragN,
  estimateFactors,
  litresPer100KmAgainst,
  ROLLING,
  tyreCoefficient,
} from '../../../server/core/fuel/engine/physics.ts';
import { amountBetween } from '../../../server/core/gaps/course/profile.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { textOf } from '../../../server/words/words-of.ts';
import { analysisOf } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { factsOf, heightsOver, rigWith } from './facts.ts';

const { diesel, petrol } = FUEL_KINDS;
const BTU_J = 1055.056;
const US_GALLON_L = 3.785411784;
const mjPerLitre = (btuPerGallon: number) => (btuPerGallon * BTU_J) / US_GALLON_L / 1e6;

describe('what a litre of fuel weighs and holds', () => {
  test('diesel weighs 820 to 845 kg/m³ at 15 °C (EN 590, Table 1; F1)', () => {
    expect(diesel.densityKgPerM3).toMatchObject({ low: 820, high: 845 });
  });

  test('arctic diesel weighs 800 to 845, from class 2 to 840, and clouds at -10 to -34 °C (EN 590, Table 3; F2)', () => {
    expect(ARCTIC_CLASSES.map(({ densityKgPerM3 }) => densityKgPerM3)).toEqual([
      { low: 800, high: 845 },
      { low: 800, high: 845 },
      { low: 800, high: 840 },
      { low: 800, high: 840 },
      { low: 800, high: 840 },
    ]);
    expect(ARCTIC_CLASSES.map(({ cloudC }) => cloudC)).toEqual([-10, -16, -22, -28, -34]);
    // Plugging points are from memory.
    expect(ARCTIC_CLASSES.map(({ pluggingC }) => pluggingC)).toEqual([-20, -26, -32, -38, -44]);
  });

  test('petrol weighs 720 to 775 kg/m³ at 15 °C (EN 228; F3)', () => {
    expect(petrol.densityKgPerM3).toMatchObject({ low: 720, high: 775 });
  });

  test('averages at British pumps lie within the bounds (DUKES 2005, Annex A: 1362 and 1187 l/t; F4)', () => {
    const [petrolKg, dieselKg] = [1e6 / 1362, 1e6 / 1187];
    expect(petrolKg).toBeCloseTo(734.2, 1);
    expect(dieselKg).toBeCloseTo(842.5, 1);
    expect(petrolKg).toBeGreaterThan(petrol.densityKgPerM3.low);
    expect(petrolKg).toBeLessThan(petrol.densityKgPerM3.high);
    expect(dieselKg).toBeGreaterThan(diesel.densityKgPerM3.low);
    expect(dieselKg).toBeLessThan(diesel.densityKgPerM3.high);
  });

  test('a litre holds 36 MJ of diesel, 32 of petrol, 24 of LPG (ADR 2017, 1.1.3.2; F5)', () => {
    expect(REGULATORY_MJ_PER_L).toEqual({ diesel: 36, petrol: 32, lpg: 24, ethanol: 21, biodiesel: 33 });
    expect([diesel, petrol, FUEL_KINDS.lpg].map((kind) => kind.energyMJPerL.typical)).toEqual([36, 32, 24]);
    // The regulation's own example: 54,000 MJ are 1,500 l of diesel.
    expect(54_000 / diesel.energyMJPerL.typical).toBe(1500);
  });

  test('the lower bounds are those of US fuels (AFDC, GREET: 128,488 and 112,114 to 116,090 Btu/gal; F6)', () => {
    expect(diesel.energyMJPerL.low).toBeCloseTo(mjPerLitre(128_488), 2);
    expect(petrol.energyMJPerL.low).toBeCloseTo(mjPerLitre(112_114), 2);
    expect(petrol.energyMJPerL.high).toBeCloseTo(mjPerLitre(116_090), 2);
  });

  test.each(Object.entries(FUEL_KINDS))('%s has its bounds in order', (_, kind) => {
    for (const { low, typical, high } of [kind.densityKgPerM3, kind.energyMJPerL]) {
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
    }
  });
});

describe('containers and heat', () => {
  test('5 l of petrol are 5.0475 l after 10 K (F9); 20 l grow by 0.67 l from 15 to 50 °C, 3.3 % (F10)', () => {
    expect(5 + growthL(5, petrol.expansionPerK, 10)).toBeCloseTo(5.0475, 10);
    expect(growthL(100, diesel.expansionPerK, 10)).toBeCloseTo(0.83, 10);
    // The row rounds 0.665 to 0.67.
    expect(growthL(20, petrol.expansionPerK, 35)).toBeCloseTo(0.665, 10);
    expect(growthL(20, petrol.expansionPerK, 35) / 20).toBeCloseTo(0.033, 3);
    expect(growthL(100, 0.0012, 35)).toBeCloseTo(4.2, 10);
  });

  test('filling by boiling point goes 90, 92, 94, 96, 98 % (ADR 4.1.1.4 (a); K6)', () => {
    expect([59, 60, 99, 100, 199, 200, 299, 300].map(fillPercentByBoilingPoint)).toEqual([
      90, 92, 92, 94, 94, 96, 96, 98,
    ]);
  });

  test('filling by expansion at 5, 15 and 30 °C (ADR 4.1.1.4 (b); K7)', () => {
    const at = (expansionPerK: number) =>
      [5, 15, 30].map((fillingC) => fillPercentAt(expansionPerK, fillingC));
    const rounded = (values: number[]) => values.map((value) => Number(value.toFixed(2)));
    expect(rounded(at(petrol.expansionPerK))).toEqual([93.98, 94.85, 96.17]);
    expect(rounded(at(0.0012))).toEqual([92.98, 94.05, 95.7]);
    expect(rounded(at(diesel.expansionPerK))).toEqual([94.47, 95.23, 96.4]);
  });

  test('petrol begins to boil under 60 °C (from memory), so the table allows 90 %; gases have no such rule', () => {
    const fillingOf = (kind: 'petrol' | 'lpg') => analysisOf({ rig: rigWith({ kind }) }).fuelUse.filling;
    expect(fillingOf('petrol')[0]!.boilingPercent).toBe(90);
    expect(fillingOf('lpg')).toEqual([]);
  });

  test('every analysis lists tanks and cans with both', () => {
    const { filling } = analysisOf().fuelUse;
    expect(filling.map(({ name, litres }) => [name, litres])).toEqual([
      ['main', 130],
      ['can', 20],
    ]);
    expect(filling[1]!.safePercent).toBeCloseTo(95.23, 2);
    expect(filling[1]!.boilingPercent).toBe(94);
    expect(filling[1]!.growsL).toBeCloseTo(20 * 0.00083 * 35, 10);
  });
});

describe('climbing', () => {
  test('3,000 kg up 1,000 m: 29.42 MJ; 2.335, 2.724, 2.043 l of diesel; 3.677, 3.065 l of petrol (F11)', () => {
    expect(liftMJ(3000, 1000)).toBeCloseTo(29.42, 2);
    const litres = (efficiency: number, mjPerL: number) => liftL(3000, 1000, efficiency, mjPerL);
    expect(litres(0.35, 36)).toBeCloseTo(2.335, 3);
    expect(litres(0.3, 36)).toBeCloseTo(2.724, 3);
    expect(litres(0.4, 36)).toBeCloseTo(2.043, 3);
    expect(litres(0.25, 32)).toBeCloseTo(3.677, 3);
    expect(litres(0.3, 32)).toBeCloseTo(3.065, 3);
  });

  test('the same litres along a route that only climbs (F11), through what users see', () => {
    const facts = factsOf({
      detail: { observed: { massKg: 3000 } },
      heights: heightsOver(100_000, [200, 450, 700, 1200]),
    });
    expect(amountBetween(fuelProfiles(facts, 'high').out, 0, 100_000)).toBeCloseTo(17 + 2.335, 2);
  });

  test('defaults lie in the published range of what reaches the wheels, diesel a third above (F12, F13)', () => {
    // Petrol: 12 to 30 % overall, 16 to 25 % combined, 20 to 30 % on the highway.
    expect(petrol.climbEfficiency).toBeGreaterThanOrEqual(0.16);
    expect(petrol.climbEfficiency).toBeLessThanOrEqual(0.3);
    // "Generally one-third more efficient": 0.333; a little more is taken, as F11 does.
    expect(diesel.climbEfficiency / petrol.climbEfficiency).toBeCloseTo(4 / 3, 0);
  });
});

describe('rolling and drag', () => {
  test('coefficients keep within the tables (F14, F15, F16)', () => {
    // F14 concrete, new asphalt 0.010 to 0.015, asphalt 0.02; rolled new gravel 0.02; loose worn gravel, medium hard
    // soil, solid sand 0.04 to 0.08; loose sand 0.2 to 0.4; F15 loose worn gravel 0.04, sand 0.1 to 0.2;
    // F16 well-packed gravel 0.012, wet loose gravel 0.06.
    expect(ROLLING.sealed).toMatchObject({ low: 0.01, high: 0.02 });
    expect(ROLLING.gravel).toEqual({ low: 0.012, typical: 0.02, high: 0.04 });
    expect(ROLLING.track).toMatchObject({ low: 0.02, high: 0.08 });
    expect(ROLLING.sand).toMatchObject({ low: 0.04, high: 0.4 });
    expect(ROLLING.sand.typical).toBeGreaterThanOrEqual(0.1);
    expect(ROLLING.sand.typical).toBeLessThanOrEqual(0.2);
    expect(ROLLING.rock.typical).toBe(0.03);
  });

  test('0.01 more on 3,000 kg: 2.34 l/100 km of diesel at 35 %; 0.02 4.67; 0.035 8.17; 0.10 23.3 (F19)', () => {
    const more = (coefficient: number) =>
      litresPer100KmAgainst(dragN(3000, coefficient, 0, 0), 0.35, diesel.energyMJPerL.typical);
    expect(more(0.01)).toBeCloseTo(2.335, 3);
    expect(more(0.02)).toBeCloseTo(4.67, 2);
    expect(more(0.035)).toBeCloseTo(8.17, 2);
    expect(more(0.1)).toBeCloseTo(23.35, 2);
  });

  test('the estimate beside the factors goes by the same figures (F19)', () => {
    // At one pace on both surfaces, so that the air drags alike.
    const { pace } = EXAMPLE_RIG;
    const kmPerHour = { slow: 35, typical: 45, fast: 60 };
    const row = analysisOf({
      rig: {
        ...rigWith({ observed: { surface: 'sealed', massKg: 3000 } }),
        pace: { ...pace, bySurface: { sand: { kmPerHour } } },
      },
    });
    const sand = row.fuelUse.surfaces.find(({ surface }) => surface === 'sand')!;
    const moreL = litresPer100KmAgainst(3000 * 9.80665 * (0.12 - 0.013), 0.35, 36);
    expect(sand.estimate!.typical).toBeCloseTo(1 + moreL / 15.5, 10);
    expect(sand.trust).toMatch(/Not to be trusted in soft sand.*tyre pressure/);
  });

  test('the tyre formula stands on sealed road only (F20): c = 0.005 + (1/p)(0.01 + 0.0095 (v/100)²)', () => {
    expect(tyreCoefficient(2.5, 100)).toBeCloseTo(0.005 + 0.4 * 0.0195, 12);
    const estimate = (tyreBar: number | null) =>
      estimateFactors({
        massKg: 3000,
        litresPer100Km: 15,
        observed: 'gravel',
        efficiency: 0.35,
        energyMJPerL: 36,
        dragAreaM2: 1.3,
        tyreBar,
        kmPerHour: () => 60,
      });
    const [told, untold] = [estimate(1), estimate(null)];
    expect(told.sealed).not.toEqual(untold.sealed);
    expect({ ...told, sealed: null }).toEqual({ ...untold, sealed: null });
  });
});

describe('by the hour', () => {
  test('idling takes 1.67 l/h with a medium heavy diesel, 1.48 with a large petrol sedan (US DOE #861; F24)', () => {
    const perHour = (usGallons: number) => Number((usGallons * US_GALLON_L).toFixed(2));
    expect(diesel.idlingLPerHour).toBe(perHour(0.44));
    expect(petrol.idlingLPerHour).toBe(perHour(0.39));
    const { rig, assumptions } = settleRig(rigWith({ hours: { idlingPerDay: 1 } }));
    expect(rig.fuel.model.perHour.idling).toBe(1.67);
    expect(toContract(assumptions).find(({ path }) => path === '/fuel/perHour/idling')?.why).toMatch(
      /Fact of the Week 861/,
    );
  });
});

describe('range', () => {
  test('80 l, a tenth kept, 12 l/100 km: 600 km; with a quarter more for sand 480 km (F25)', () => {
    const fuelUseAt = (litresPer100Km: number) =>
      analysisOf({
        rig: {
          ...EXAMPLE_RIG,
          fuel: {
            kind: 'diesel',
            litresPer100Km: { low: litresPer100Km, typical: litresPer100Km, high: litresPer100Km },
            tanks: [{ name: 'main', litres: 80 }],
            reserve: { fraction: 0.1 },
          },
        },
      }).fuelUse;
    expect(fuelUseAt(12).range.high.afterKm).toBeCloseTo(600, 9);
    expect(fuelUseAt(15).range.high.afterKm).toBeCloseTo(480, 9);
    expect(fuelUseAt(12).range.high.beforeKm).toBeCloseTo(80 / 0.12, 9);
  });

  test('in sand by a factor of 1.25 on a rate from sealed road: 480 km (F25)', () => {
    const { fuelUse } = analysisOf({
      rig: {
        ...EXAMPLE_RIG,
        fuel: {
          kind: 'diesel',
          litresPer100Km: { low: 12, typical: 12, high: 12 },
          tanks: [{ name: 'main', litres: 80 }],
          reserve: { fraction: 0.1 },
          observed: { surface: 'sealed' },
          surfaceFactors: { sand: 1.25 },
        },
      },
      trip: {
        surfaces: [{ fromKm: 0, toKm: 1340, surface: 'sand', allowancePercent: 0 }],
        allowancePercent: 0,
      },
    });
    expect(fuelUse.onRoute.high.afterKm).toBeCloseTo(480, 6);
  });

  test('13 to 14 l/100 km and 180 l give 1,200 to 1,300 km (common practice, no source)', () => {
    const { range } = analysisOf({
      rig: {
        ...EXAMPLE_RIG,
        fuel: {
          kind: 'diesel',
          litresPer100Km: { low: 13, typical: 13.5, high: 14 },
          tanks: [
            { name: 'first', litres: 90 },
            { name: 'second', litres: 90 },
          ],
          reserve: { km: 100 },
        },
      },
    }).fuelUse;
    // 180 l / 14 and / 13 are 1,286 and 1,385 km to the last drop; with 100 km kept 1,186 and 1,277 km.
    expect(Math.abs(range.high.afterKm - 1200)).toBeLessThan(20);
    expect(Math.abs(range.low.afterKm - 1300)).toBeLessThan(25);
  });
});

describe('diesel and cold nights', () => {
  const textAt = (coldestC: number | null) => {
    const [caution] = coldCautions('diesel', coldestC);
    return caution === undefined ? null : textOf(caution);
  };
  test.each([
    [null, null],
    [4, null],
    [-8, /Arctic class 0/],
    [-20, /Arctic class 0/],
    [-21, /Arctic class 1/],
    [-44, /Arctic class 4/],
    [-45, /No class of EN 590/],
  ])('at %j °C', (coldestC, expected) => {
    const text = textAt(coldestC);
    if (expected === null) expect(text).toBeNull();
    else expect(text).toMatch(expected);
  });

  test('petrol gets none', () => {
    expect(coldCautions('petrol', -30)).toEqual([]);
  });
});
