import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  amountBetween,
  breaksInside,
  evenProfile,
  jumpAt,
  profileOf,
  sumBefore,
} from '../../../../server/core/gaps/course/profile.ts';

const withJump = profileOf([
  { lengthM: 100, amount: 10 },
  { lengthM: 0, amount: 5 },
  { lengthM: 100, amount: 20 },
]);

describe('a profile', () => {
  test('is straight between its places', () => {
    expect(sumBefore(withJump, 50)).toBe(5);
    expect(sumBefore(withJump, 150)).toBe(25);
  });

  test('has a jump still to come on arriving at it, so the stretch from there on holds it', () => {
    expect(sumBefore(withJump, 100)).toBe(10);
    expect(amountBetween(withJump, 0, 100)).toBe(10);
    expect(amountBetween(withJump, 100, 200)).toBe(25);
    expect(jumpAt(withJump, 100)).toBe(5);
    expect(jumpAt(withJump, 50)).toBe(0);
  });

  test('names its places inside a stretch once', () => {
    expect(breaksInside(withJump, 0, 200)).toEqual([100]);
    expect(breaksInside(withJump, 100, 200)).toEqual([]);
  });

  test('should add up over stretches that tile the route', () => {
    const steps = fc.array(fc.record({ lengthM: fc.nat(1000), amount: fc.nat(50) }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(
        steps,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 6 }),
        (some, shares) => {
          const profile = profileOf(some);
          const lengthM = profile.atM.at(-1)!;
          const cuts = [0, ...shares.map((share) => share * lengthM).sort((a, b) => a - b), lengthM];
          const sum = cuts
            .slice(1)
            .reduce((total, to, index) => total + amountBetween(profile, cuts[index]!, to), 0);
          expect(sum).toBeCloseTo(amountBetween(profile, 0, lengthM), 6);
        },
      ),
    );
  });

  test('of one rate gives that rate everywhere', () => {
    expect(amountBetween(evenProfile(1000, 0.17), 250, 750)).toBeCloseTo(85, 12);
  });
});
