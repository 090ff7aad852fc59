import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { analysisOf, DIESEL, pointFeature } from '../../helpers/analyse-input.ts';
import { drive, massOf, PLAIN, rigOf } from './rigs.ts';

const at = (behindFrontAxleM: number, heightM = 0.8) => ({ position: { behindFrontAxleM, heightM } });
const codes = (rig: RigFile) => drive(rig).cautions.map(({ code }) => code);

describe('cautions', () => {
  test('over a limit, with the place and by how much', () => {
    const { cautions } = drive(rigOf({ permitted: { totalKg: 2699.85, frontKg: 1250, rearKg: 1400 } }));
    const over = cautions.filter(({ code }) => code === 'mass-over-limit');
    expect(over.map(({ text }) => text)).toEqual([
      'On this route the vehicle is 80 kg over what it may weigh, cans not filled.',
      expect.stringMatching(/^On this route the front axle is 89\.9 kg over what it may carry/),
      expect.stringMatching(/^On this route the rear axle is 39\.9 kg over what it may carry/),
    ]);
    expect(over[0]).toMatchObject({ fromKm: 0, toKm: 0 });
  });

  test('over a limit only after a filling on the way', () => {
    const rig = rigOf({ permitted: { totalKg: 2700 } });
    const { cautions } = analysisOf({
      rig,
      features: [pointFeature('node/1', 100, DIESEL)],
      trip: { aboard: { fuelLitres: 40, waterLitres: 20 }, onward: { km: 0 } },
    });
    const over = cautions.find(({ code }) => code === 'mass-over-limit');
    expect(over!.fromKm).toBeCloseTo(100, 6);
  });

  test('over a limit only with the cans filled is told as that', () => {
    const cans = { litres: 20, owned: 4, emptyKg: 0, ...at(1.425) };
    const rig = rigOf({ permitted: { totalKg: 2800, frontKg: 2000, rearKg: 2000 } }, { fuel: { cans } });
    expect(codes(rig)).toContain('mass-over-limit-full');
    expect(codes(rig)).not.toContain('mass-over-limit');
    expect(codes(rigOf({ permitted: { totalKg: 2800, frontKg: 2000, rearKg: 2000 } }))).not.toContain(
      'mass-over-limit-full',
    );
  });

  test('roof loads: over the limit, within it, and with none told', () => {
    const cabin = { fromM: 0.5, toM: 2, floorHeightM: 0.7, roofHeightM: 1.9 };
    const gear = [{ name: 'wheel', kg: 60, ...at(1.4, 2) }];
    const text = (roofKg?: number) =>
      drive(rigOf({ cabin, gear, ...(roofKg === undefined ? {} : { permitted: { roofKg } }) })).cautions.find(
        ({ code }) => code.startsWith('roof-'),
      );
    expect(text(50)).toMatchObject({ code: 'roof-over-limit' });
    expect(text(50)!.text).toMatch(/^60 kg on the roof, 10 kg over/);
    expect(text(75)).toMatchObject({ code: 'roof-load' });
    expect(text()!.text).toMatch(/was not told/);
    expect(massOf(rigOf({ cabin })).roof).toEqual({ kg: 0, limitKg: null });
    expect(codes(rigOf({ cabin })).filter((code) => code.startsWith('roof-'))).toEqual([]);
  });

  test('loads behind the rear axle and behind the body', () => {
    const rig = rigOf({ bodyRearOverhangM: 0.8, gear: [{ name: 'spare wheel', kg: 40, ...at(2.85 + 0.9) }] });
    expect(codes(rig)).toEqual(expect.arrayContaining(['rear-overhang', 'behind-body']));
    expect(codes(rigOf({ bodyRearOverhangM: 0.8 }))).not.toContain('rear-overhang');
  });

  test('fuel in the cabin, not water in it and not fuel on its roof', () => {
    const cabin = { fromM: 0.5, toM: 2, floorHeightM: 0.7, roofHeightM: 1.9 };
    const cans = (heightM: number) => ({ litres: 20, owned: 1, emptyKg: 4, ...at(1.5, heightM) });
    expect(codes(rigOf({ cabin }, { fuel: { cans: cans(1) } }))).toContain('fuel-in-cabin');
    expect(codes(rigOf({ cabin }, { fuel: { cans: cans(2) } }))).not.toContain('fuel-in-cabin');
    const ahead = { ...cans(1), position: { behindFrontAxleM: 0.4, heightM: 1 } };
    expect(codes(rigOf({ cabin }, { fuel: { cans: ahead } }))).not.toContain('fuel-in-cabin');
    expect(codes(rigOf({ cabin }, { water: { cans: cans(1) } }))).not.toContain('fuel-in-cabin');
  });

  test('a load that would lift an axle', () => {
    expect(codes(rigOf({ gear: [{ name: 'anvil', kg: 2500, ...at(5) }] }))).toContain('axle-lifts');
    expect(codes(rigOf())).not.toContain('axle-lifts');
  });

  test('fewer than three lifting steps', () => {
    const { cgHeightM: _height, ...vehicle } = PLAIN;
    const step = { degrees: 20, groundAxleKg: 1330 };
    const lifted = (steps: number): RigFile => ({
      ...rigOf(),
      vehicle: {
        ...vehicle,
        axleLift: { lifted: 'rear', wheelRadiusM: 0.38, steps: Array(steps).fill(step) },
      },
    });
    expect(codes(lifted(2))).toContain('axle-lift-few');
    expect(codes(lifted(3))).not.toContain('axle-lift-few');
  });
});
