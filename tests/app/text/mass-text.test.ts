import { describe, expect, test } from 'vitest';
import { massText } from '../../../server/app/text/mass-text.ts';
import { massOf, rigOf } from '../../core/mass/rigs.ts';

const at = (behindFrontAxleM: number, heightM = 0.8) => ({ position: { behindFrontAxleM, heightM } });

describe('the masses in the terminal', () => {
  const cabin = { fromM: 0.5, toM: 2, floorHeightM: 0.7, roofHeightM: 1.9 };
  const rig = rigOf(
    { cabin, permitted: { totalKg: 2800 }, gear: [{ name: 'box', kg: 20, ...at(1.4, 2) }] },
    { fuel: { cans: { litres: 20, owned: 2, emptyKg: 4, ...at(3.75) } } },
  );
  const lines = massText(massOf(rig));

  test('one line for each state, with total and what is left of the payload', () => {
    // 2,600 kg, a box of 20 kg, two empty cans, 130 l of 0.845 kg/l, 70 l of water: 7.85 kg more than permitted.
    const departure = lines.find((line) => line.startsWith('at departure'));
    expect(departure).toMatch(/127\.0 +70\.0 +2807\.\d+ +-7\.\d+/);
    expect(lines.find((line) => line.startsWith('tanks and cans full'))).toBeDefined();
    expect(lines.find((line) => line.startsWith('nothing usable left'))).toBeDefined();
    expect(lines.find((line) => line.startsWith('km 0.0, worst for total'))).toBeDefined();
  });

  test('limits that were not told are dashes, not noughts', () => {
    const untold = massText(massOf(rigOf())).find((line) => line.startsWith('at departure'));
    expect(untold).toMatch(/^at departure +127\.0 +70\.0 +2779\.\d+ +- +\d+\.\d+ +- +\d+\.\d+ +- /);
  });

  test('what each container does, on the roof, behind the rear axle, and what a litre weighs', () => {
    // 41.8 kg of full cans 0.9 m behind the rear axle of a wheelbase of 2.85 m.
    expect(lines.find((line) => line.startsWith('2 fuel cans of 20 l'))).toMatch(
      /40\.0 +41\.8 +-13\.2 +55\.0 +-0\.27 +1\.11$/,
    );
    expect(lines).toContain('on the roof, all full: 20.0 kg (limit not told)');
    expect(lines).toContain(
      'behind the rear axle, all full: 41.8 kg, which put -13.2 kg on the front axle and 55.0 kg on the rear one',
    );
    expect(lines.find((line) => line.startsWith('diesel: 0.845 kg/l'))).toMatch(/EN 590/);
  });

  test('nothing for a rig without a vehicle', () => expect(massText(null)).toEqual([]));
});
