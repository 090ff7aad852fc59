import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TreatmentFile, WaterNote } from '../../../server/contract/treatment.ts';
import { TreatmentReport } from '../../../server/contract/treatment.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { analysisOf, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { LAMP, ULTRAFILTER } from './lines.ts';

const LINE: TreatmentFile = { stages: [ULTRAFILTER, LAMP], at: 'tap' };
const SPRING = { natural: 'spring' };
const WELL = { man_made: 'water_well' };
const implied = { counting: { water: 'implied' as const } };

/**
 * 500 km with one water half way, for the design's example rig: 70 l, 18 l a day, 2 days of reserve. Two nights and ten
 * kilometres are 36.2 l: with the reserve more than 70; to the water and on from there it is a night and five, 18.1 l.
 */
function analysed(tags: Record<string, string>, rig: Partial<RigFile> = {}, trip: Partial<TripFile> = {}) {
  return analysisOf({
    document: equatorDocument(500),
    features: [pointFeature('node/1', 250, tags)],
    rig: { ...EXAMPLE_RIG, ...rig },
    trip: { ...inputOf().trip, ...trip },
  });
}

const codesOf = (passing: Passing | undefined) => passing?.reasons.map(({ code }) => code) ?? [];
const note = (changes: Partial<WaterNote> = {}): WaterNote => ({
  id: 'node/1',
  on: '2026-05-01',
  saltOk: true,
  ...changes,
});

describe('a spring half way', () => {
  it('counts with ultrafilter and lamp, and splits the gap', () => {
    const { passings, water } = analysed(SPRING, { treatment: LINE }, implied);
    expect(passings[0]).toMatchObject({ counts: true, waterClass: 'treatable', evidence: 'implied' });
    expect(codesOf(passings[0])).toContain('made-fit');
    expect(water.gaps.map((gap) => gap.verdict)).toEqual(['enough', 'enough']);
  });

  it('does not without a line: the one gap eats into the reserve', () => {
    const { passings, water, treatment } = analysed(SPRING, {}, implied);
    expect(treatment).toBeNull();
    expect(passings[0]).toMatchObject({ counts: false });
    expect(water.gaps.map((gap) => gap.verdict)).toEqual(['into-reserve']);
  });

  it('does not with an ultrafilter alone, and says what lacks', () => {
    const { passings, water } = analysed(SPRING, { treatment: { stages: [ULTRAFILTER] } }, implied);
    expect(water.gaps).toHaveLength(1);
    const lacks = passings[0]!.reasons.find(({ code }) => code === 'line-lacks');
    expect(lacks?.text).toContain('4 log of viruses short of the target purifier');
  });

  it('still has to be known as well as asked for: stated, or confirmed', () => {
    expect(codesOf(analysed(SPRING, { treatment: LINE }).passings[0])).toEqual(
      expect.arrayContaining(['made-fit', 'evidence-below']),
    );
    const confirmations = [{ id: 'node/1', on: '2026-05-01', works: true }];
    expect(analysed(SPRING, { treatment: LINE }, { confirmations }).water.gaps).toHaveLength(2);
    const untreated = { ...SPRING, drinking_water: 'untreated' };
    expect(analysed(untreated, { treatment: LINE }).water.gaps).toHaveLength(2);
  });

  it.each([
    [{ drinking_water: 'no' }, 'not-fit'],
    [{ salt: 'yes' }, 'salty'],
    [{ access: 'private' }, 'not-public'],
    [{ intermittent: 'yes' }, 'may-be-dry'],
  ])('with %j stays out, line or not', (tags, code) => {
    const [passing] = analysed({ ...SPRING, ...tags }, { treatment: LINE }, implied).passings;
    expect(passing).toMatchObject({ counts: false });
    expect(codesOf(passing)).toContain(code);
  });

  it('of salt noted by the user does not count; with reverse osmosis it does', () => {
    const trip = { ...implied, waterNotes: [note({ saltOk: false })] };
    const [passing] = analysed(SPRING, { treatment: LINE }, trip).passings;
    expect(passing).toMatchObject({ counts: false, waterClass: 'washing' });
    const osmosis = {
      stages: [...LINE.stages, { kind: 'carbon' as const }, { kind: 'reverse-osmosis' as const }],
      pump: { noFlowKPa: 800, ratedKPa: 200, ratedLPerMin: 10 },
    };
    const rig = { treatment: osmosis };
    // How salt it is has to be told for that.
    expect(analysed(SPRING, rig, trip).passings[0]).toMatchObject({ counts: false });
    const measured = { ...implied, waterNotes: [note({ saltOk: false, tdsMgPerLitre: 2500 })] };
    expect(analysed(SPRING, rig, measured).passings[0]).toMatchObject({ counts: true });
  });
});

describe('a well half way', () => {
  it('counts only with a dated note on salt and a line', () => {
    const rig = { treatment: LINE };
    const noted = { ...implied, waterNotes: [note()] };
    expect(analysed(WELL, rig, noted).passings[0]).toMatchObject({
      counts: true,
      evidence: 'implied',
      waterClass: 'treatable',
    });
    expect(analysed(WELL, rig, implied).passings[0]).toMatchObject({ counts: false, waterClass: 'washing' });
    expect(analysed(WELL, {}, noted).passings[0]).toMatchObject({ counts: false, waterClass: 'treatable' });
    const old = { ...implied, waterNotes: [note({ on: '2024-05-01' })] };
    expect(analysed(WELL, rig, old).passings[0]).toMatchObject({ counts: false });
  });

  it('that its tags call untreated needs the note as well', () => {
    const tags = { ...WELL, drinking_water: 'untreated' };
    const [passing] = analysed(tags, { treatment: LINE }).passings;
    expect(passing).toMatchObject({ counts: false });
    expect(codesOf(passing)).toContain('line-lacks');
    expect(analysed(tags, { treatment: LINE }, { waterNotes: [note()] }).passings[0]).toMatchObject({
      counts: true,
    });
  });

  it('tells how long filling takes, with rope and bucket or at a flow', () => {
    const textOf = (changes: Partial<WaterNote>, rig: Partial<RigFile> = {}) =>
      analysed(WELL, rig, { waterNotes: [note(changes)] }).passings[0]!.reasons.find(
        ({ code }) => code === 'time-to-fill',
      )?.text;
    expect(textOf({ litresPerMinute: 7 })).toContain('70 l in about 10 min at 7 l/min (as noted)');
    const rope = { equipment: { ropeAndBucket: true } };
    expect(textOf({ depthM: 10 }, rope)).toContain('70 l in about 9 min at 8 l/min (rope and bucket)');
    expect(textOf({ depthM: 10 })).toBeUndefined();
  });

  it('that people drink is dropped where the user found it salty', () => {
    const tags = { ...WELL, drinking_water: 'yes' };
    const trip = { waterNotes: [note({ saltOk: false })] };
    expect(analysed(tags, {}, trip).passings[0]).toMatchObject({ counts: false, waterClass: 'washing' });
    expect(analysed(tags).passings[0]).toMatchObject({ counts: true, waterClass: 'drinking' });
  });
});

describe('treating everything', () => {
  const everything = (stages: TreatmentFile['stages']) => ({
    treatment: { stages, treatEverything: true },
  });

  it('makes a tap treatable: it counts when the line does it, and not else', () => {
    const [fit] = analysed(TAP, everything(LINE.stages)).passings;
    expect(fit).toMatchObject({ counts: true, waterClass: 'treatable', evidence: 'stated' });
    expect(analysed(TAP, everything([ULTRAFILTER])).passings[0]).toMatchObject({ counts: false });
    expect(analysed(TAP, { treatment: { stages: [ULTRAFILTER] } }).passings[0]).toMatchObject({
      counts: true,
      waterClass: 'drinking',
    });
  });

  it('leaves what is confirmed as it is', () => {
    const confirmations = [{ id: 'node/1', on: '2026-05-01', works: true }];
    const [passing] = analysed(TAP, everything([ULTRAFILTER]), { confirmations }).passings;
    expect(passing).toMatchObject({ counts: true, waterClass: 'drinking' });
  });
});

describe('the report of a line', () => {
  const analysis = analysed(SPRING, { treatment: LINE }, implied);

  it('fits the contract, and its cautions are among those of the trip', () => {
    expect([...Value.Errors(TreatmentReport, analysis.treatment)]).toEqual([]);
    expect(analysis.cautions).toEqual(expect.arrayContaining(analysis.treatment!.cautions));
    expect(analysis.treatment!.cautions.map(({ code }) => code)).toEqual(['treatment-at-tap']);
  });

  it('takes the days of the way at the high rate through each cartridge', () => {
    const days = analysis.water.gaps.reduce((sum, gap) => sum + gap.days, 0);
    expect(analysis.treatment!.cartridges[0]!.litres).toBeCloseTo(days * 18, 9);
  });

  it('names the defaults that stood in', () => {
    const paths = analysis.assumptions.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        '/rig/treatment/target',
        '/rig/treatment/maximumLog',
        '/rig/treatment/treatEverything',
      ]),
    );
    expect(paths).not.toContain('/rig/treatment/at');
    expect(analysis.rig.treatment).toMatchObject({ target: 'purifier', maximumLog: 6 });
  });

  it('holds boiling to the longer rule where the route has no heights', () => {
    const boiled = (minutes: number) =>
      analysed(SPRING, { treatment: { stages: [{ kind: 'boiling', minutes }] } }, implied).passings[0]!
        .counts;
    expect([boiled(1), boiled(3)]).toEqual([false, true]);
  });

  it('a rig without a line gives the same gaps as before it could have one', () => {
    const plain = analysed(TAP);
    expect(analysed(TAP, { treatment: LINE }).water).toEqual(plain.water);
    expect(plain.rig).not.toHaveProperty('treatment');
  });
});
