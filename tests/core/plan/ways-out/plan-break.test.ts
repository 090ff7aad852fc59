import { describe, expect, test } from 'vitest';
import { massBreakOf } from '../../../../server/core/plan/ways-out/plan-break.ts';
import { textOf } from '../../../../server/words/words-of.ts';
import { bareRoute, questionOf } from '../by-hand/small-routes.ts';

/** Tanks of 20 l of fuel and 40 l of water; the start as told. */
const question = (startL: { fuel: number; water: number }, leftKg: number) => ({
  ...questionOf(bareRoute({ startL })),
  room: {
    limits: [
      {
        name: 'rear' as const,
        leftKg,
        canKg: { fuel: { empty: 4, filling: 16 }, water: { empty: 1, filling: 20 } },
        perLitreKg: { fuel: 0.8, water: 1 },
      },
    ],
  },
});

describe('a permitted mass that makes a plan impossible', () => {
  test('is told of the start, where it is broken there with no can full, with what brings it down', () => {
    // 18 kg over: 22.5 l of fuel are more than the 20 aboard.
    const { cause, text } = massBreakOf(question({ fuel: 20, water: 40 }, -18));
    expect(cause).toBe('mass');
    expect(text).toMatchObject({
      phrase: 'over-at-start',
      facts: { mass: 'rear', lessL: { fuel: null, water: 18 } },
    });
    expect(textOf(text)).toBe(
      'At the start the vehicle is 18 kg over the permitted load of the rear axle, with no can full: leave so much behind, or start with 18 l of water less.',
    );
  });

  test('is told of the cans, where the start as it is keeps within it', () => {
    // Of 40 l of water 10 are aboard: 30 kg less than with full tanks.
    expect(massBreakOf(question({ fuel: 20, water: 10 }, -18)).text.phrase).toBe('masses-forbid');
    expect(massBreakOf(question({ fuel: 20, water: 40 }, 5)).text.phrase).toBe('masses-forbid');
  });
});
