import { describe, expect, it } from 'vitest';
import { profileOf } from '../../../../server/core/gaps/course/profile.ts';
import { canMetres } from '../../../../server/core/plan/legs/can-metres.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import { courseOf } from '../../../helpers/course.ts';
import { bareRoute, bareStop, questionOf, rigOf } from '../by-hand/small-routes.ts';

const ONE_CAN = { from: 0, to: 1, cans: 1, filledL: 0 };

describe('metres that a can is carried full', () => {
  it('end where the tanks have room for it, found stretch by stretch where the use is not even', () => {
    const route = bareRoute({ lengthKm: 200, canL: { fuel: 13, water: 5 } });
    const course = courseOf({
      rigFile: rigOf(route),
      lengthM: 200_000,
      allowances: [{ fromM: 100_000, toM: 200_000, factor: 1.5 }],
    });
    const side: CarrySide = { ...questionOf(route).sides.fuel, course };
    // 10 l to km 100, then 15 l/100 km: the 13th litre is gone 20 km on.
    expect(canMetres(side, { ...ONE_CAN, tankL: 20 })).toBeCloseTo(120_000, 3);
  });

  it('are none where the tanks have room for it at once, also where nothing is used on the first stretch', () => {
    const { fuel } = questionOf(bareRoute({ lengthKm: 200 })).sides;
    const out = profileOf([
      { lengthM: 50_000, amount: 0 },
      { lengthM: 150_000, amount: 15 },
    ]);
    const side: CarrySide = { ...fuel, course: { ...fuel.course, litres: { ...fuel.course.litres, out } } };
    expect(canMetres(side, { ...ONE_CAN, tankL: 15 })).toBe(0);
  });

  it('of water end when the time has passed in which so much is drunk', () => {
    const route = bareRoute({
      lengthKm: 150,
      tankL: { fuel: 20, water: 10 },
      canL: { fuel: 5, water: 6 },
      waterLPerDay: 6,
    });
    // A day and a half, 9 l: 6 of them on the first day, of 100 km.
    expect(canMetres(questionOf(route).sides.water, { ...ONE_CAN, tankL: 10 })).toBeCloseTo(100_000, 3);
  });

  it('are fewer by what goes while filling: water is used then as on the way', () => {
    // 10 l at a twentieth of a day each are half a day, 50 km another: 6 l. Of the 4 that make room for the can 3 go
    // while it is filled, one on 16.7 km.
    const route = bareRoute({
      lengthKm: 150,
      tankL: { fuel: 20, water: 10 },
      canL: { fuel: 5, water: 4 },
      waterLPerDay: 6,
      stops: [bareStop(100, { offers: 'water', daysPerLitre: 0.05 })],
    });
    const hop = { from: 1, to: 2, tankL: 10, cans: 1, filledL: 10 };
    expect(canMetres(questionOf(route).sides.water, hop)).toBeCloseTo(100_000 / 6, 3);
  });
});
