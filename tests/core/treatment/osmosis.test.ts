import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { SourceKind, TreatmentFile, WaterNote } from '../../../server/contract/treatment.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { osmoticKPa, tdsOf } from '../../../server/core/treatment/line/osmosis.ts';
import { judgeSource } from '../../../server/core/treatment/source/judge-source.ts';
import { noted } from '../../../server/core/treatment/source/water-notes.ts';
import { analysisOf } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { LAMP, lineOf, textsOf, ULTRAFILTER } from './lines.ts';

type Stages = TreatmentFile['stages'];
const CARBON = { kind: 'carbon' as const };
const OSMOSIS = { kind: 'reverse-osmosis' as const, recovery: 0.25 };
const LINE: Stages = [ULTRAFILTER, LAMP, CARBON, OSMOSIS];
const pumpOf = (noFlowKPa: number) => ({ pump: { noFlowKPa, ratedKPa: 100, ratedLPerMin: 10 } });

const verdictOf = (
  salt: Partial<WaterNote>,
  { stages = LINE, rest = pumpOf(800) }: { stages?: Stages; rest?: Omit<TreatmentFile, 'stages'> } = {},
  kind: SourceKind = 'spring',
) => {
  const note = { id: 'node/1', on: '2026-05-01', saltOk: false, temperatureC: 25, ...salt };
  return judgeSource(
    lineOf(stages, rest),
    kind,
    { altitudeM: 0, flowLPerMin: null },
    noted([note], '2026-05-04'),
  );
};

describe('osmotic pressure by van ’t Hoff', () => {
  test.each([
    // i c R T with i 2 and 58.44 g/mol: 1 g/l at 25 °C is 2 × 17.112 × 8.314463 × 298.15 Pa.
    [1000, 25, 84.84],
    [5000, 25, 424.2],
    [35_000, 25, 2969],
    [35_000, 0, 2720],
    [0, 25, 0],
  ])('of %i mg/l at %i °C is %d kPa', (tds, celsius, kPa) => {
    expect(osmoticKPa(tds, celsius)).toBeCloseTo(kPa, kPa > 1000 ? -1 : 1);
  });

  test('takes the salt from the conductivity where it was not weighed: 0.7 mg/l each µS/cm', () => {
    expect(tdsOf({ conductivityMicroSPerCm: 5000 })).toBeCloseTo(3500, 9);
    expect(tdsOf({ tdsMgPerLitre: 2000, conductivityMicroSPerCm: 5000 })).toBe(2000);
    expect(tdsOf({})).toBeNull();
    expect(tdsOf(null)).toBeNull();
  });
});

describe('salt goes out', () => {
  test('where the pump is above what holds: 3 g/l, of which a quarter is made, hold with 339 kPa', () => {
    const { ok, remarks } = verdictOf({ tdsMgPerLitre: 3000 });
    expect(ok).toBe(true);
    // 84.84 × 3 / 0.75.
    expect(textsOf(remarks).join()).toContain(
      '3000 mg/l holds with 339 kPa (van ’t Hoff), the pump has 800 kPa',
    );
  });

  test('not where it is below: seawater takes 3,959 kPa of what is left', () => {
    const { ok, lacks } = verdictOf({ tdsMgPerLitre: 35_000 });
    expect(ok).toBe(false);
    expect(textsOf(lacks).join()).toContain('nothing goes through the membrane');
  });

  test('with the pump of a household only up to some 2.6 g/l at 300 kPa', () => {
    const rest = pumpOf(300);
    expect(verdictOf({ tdsMgPerLitre: 2600 }, { rest }).ok).toBe(true);
    expect(verdictOf({ tdsMgPerLitre: 2700 }, { rest }).ok).toBe(false);
  });

  test('by the pressure at the flow that feeds the membrane: 1 l/min made are 4 l/min fed', () => {
    const stages: Stages = [ULTRAFILTER, LAMP, CARBON, { ...OSMOSIS, flowLPerMin: 1 }];
    // 800 − 700 × 4 / 10 = 520 kPa.
    expect(verdictOf({ tdsMgPerLitre: 4500 }, { stages }).ok).toBe(true);
    expect(verdictOf({ tdsMgPerLitre: 4700 }, { stages }).ok).toBe(false);
    expect(verdictOf({ tdsMgPerLitre: 4700 }).ok).toBe(true);
  });

  test('not where nobody told how salt the water is, nor what the pump presses', () => {
    expect(textsOf(verdictOf({}).lacks).join()).toContain('how salt it is was not told');
    expect(textsOf(verdictOf({ tdsMgPerLitre: 1500 }, { rest: {} }).lacks).join()).toContain('pump');
  });
});

describe('a membrane is spoilt', () => {
  const spoilt = (stages: Stages) => verdictOf({ tdsMgPerLitre: 1500 }, { stages });

  test('by chlorine before it with no carbon between', () => {
    const chlorine = { kind: 'chlorine' as const, mgPerLitre: 2, minutes: 30 };
    expect(spoilt([ULTRAFILTER, CARBON, chlorine, OSMOSIS, LAMP]).ok).toBe(false);
    expect(lineOf([ULTRAFILTER, CARBON, chlorine, OSMOSIS]).stages[3]?.fault).toBe('chlorine-before');
    expect(spoilt([ULTRAFILTER, chlorine, CARBON, OSMOSIS, LAMP]).ok).toBe(true);
    expect(spoilt([ULTRAFILTER, CARBON, OSMOSIS, LAMP, chlorine]).ok).toBe(true);
  });

  test('by a line without carbon before it', () => {
    expect(spoilt([ULTRAFILTER, LAMP, OSMOSIS]).ok).toBe(false);
    expect(spoilt([ULTRAFILTER, LAMP, OSMOSIS, CARBON]).ok).toBe(false);
    expect(lineOf([OSMOSIS]).stages[0]?.fault).toBe('no-carbon');
  });
});

describe('what it throws away', () => {
  const crew = { people: [{ drinking: 4, cooking: 2, washingUp: 0, washing: 4, shower: 0 }] };
  const { litresPerDay: _, ...water } = EXAMPLE_RIG.water;
  const rigWith = (
    treatment: RigFile['treatment'],
    changes: Partial<RigFile> = { water, crew },
  ): RigFile => ({
    ...EXAMPLE_RIG,
    ...changes,
    ...(treatment === undefined ? {} : { treatment }),
  });
  const typicalOf = (rig: RigFile) => settleRig(rig).rig.water;

  test('is part of what the tank gives: need over recovery, for what is drunk only', () => {
    const without = typicalOf(rigWith(undefined));
    const at = typicalOf(rigWith({ stages: LINE, at: 'tap' }));
    expect(at.grades?.drinkingPerDay.typical).toBeCloseTo(
      (without.grades?.drinkingPerDay.typical ?? 0) / 0.25,
      9,
    );
    expect(at.grades?.washingPerDay).toEqual(without.grades?.washingPerDay);
    const moreL = 3 * (without.grades?.drinkingPerDay.typical ?? 0);
    expect(at.litresPerDay.typical).toBeCloseTo(without.litresPerDay.typical + moreL, 9);
    expect(at.tapLitresPerDay).toBeCloseTo(without.litresPerDay.high, 9);
  });

  test('of a rig that tells litres a day only: of all of them', () => {
    const rig = rigWith({ stages: LINE, at: 'tap' }, {});
    expect(typicalOf(rig).litresPerDay.high).toBeCloseTo(18 / 0.25, 9);
    expect(analysisOf({ rig }).rig.water.litresPerDay).toEqual(EXAMPLE_RIG.water.litresPerDay);
  });

  test('is left at the source where the line works while the tank is filled', () => {
    const rig = rigWith({ stages: LINE, at: 'filling' });
    expect(typicalOf(rig).litresPerDay).toEqual(typicalOf(rigWith(undefined)).litresPerDay);
  });

  test('is in an observed figure already', () => {
    const observed = { ...crew, observedLitresPerDay: 20 };
    const rig = rigWith({ stages: LINE, at: 'tap' }, { water, crew: observed });
    expect(typicalOf(rig).litresPerDay.typical).toBe(20);
  });
});
