import { describe, expect, it } from 'vitest';
import { checkRigValue, checkTripValue } from '../../../../server/app/input/plan-input.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TreatmentFile } from '../../../../server/contract/treatment.ts';
import { settleRig } from '../../../../server/core/rig/settle-rig.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { ULTRAFILTER } from '../lines.ts';

const placeOf = (treatment: unknown): string | null => {
  const outcome = checkRigValue({ ...EXAMPLE_RIG, treatment }, 'rig.yaml');
  return outcome.ok ? null : outcome.problem.place;
};

describe('a treatment line that cannot be', () => {
  it.each([
    ['/treatment/stages', { stages: [] }],
    ['/treatment/stages/0/colour', { stages: [{ ...ULTRAFILTER, colour: 'blue' }] }],
    ['/treatment/stages/0/poreMicron', { stages: [{ kind: 'ultrafilter', poreMicron: -1 }] }],
    ['/treatment/stages/0/poreMicron', { stages: [{ kind: 'uv', poreMicron: 1 }] }],
    ['/treatment/stages/0/doseMJPerCm2', { stages: [{ kind: 'carbon', doseMJPerCm2: 40 }] }],
    ['/treatment/stages/1/recovery', { stages: [ULTRAFILTER, { kind: 'boiling', recovery: 0.5 }] }],
    [
      '/treatment/stages/0/stopsPercent/viruses',
      { stages: [{ kind: 'carbon', stopsPercent: { viruses: 100 } }] },
    ],
    [
      '/treatment/stages/0/stopsPercent/viruses',
      { stages: [{ kind: 'carbon', stopsPercent: { viruses: 99 }, logs: { viruses: 2 } }] },
    ],
    [
      '/treatment/pump/ratedKPa',
      { stages: [ULTRAFILTER], pump: { noFlowKPa: 300, ratedKPa: 300, ratedLPerMin: 5 } },
    ],
    [
      '/treatment/taps/0/afterStage',
      { stages: [ULTRAFILTER], taps: [{ name: 'a', afterStage: 2, use: 'kitchen' }] },
    ],
    [
      '/treatment/hoses/0/afterStage',
      { stages: [ULTRAFILTER], hoses: [{ afterStage: 2, lengthM: 1, boreMm: 8 }] },
    ],
    ['/treatment/maximumLog', { stages: [ULTRAFILTER], maximumLog: 5 }],
    ['/treatment/maximumLog', { stages: [ULTRAFILTER], target: { bacteria: 7, viruses: 0, protozoa: 0 } }],
  ])('is refused at %s', (place, treatment) => expect(placeOf(treatment)).toBe(place));

  it('the settled one is taken again, and settles to itself', () => {
    const stages = [
      ULTRAFILTER,
      { kind: 'chlorine', mgPerLitre: 2, minutes: 30 },
      { kind: 'reverse-osmosis' },
      { kind: 'boiling', minutes: 3 },
    ] satisfies TreatmentFile['stages'];
    const { settled } = settleRig({ ...EXAMPLE_RIG, treatment: { stages, mayHaveFrozen: true } });
    expect(checkRigValue(settled, 'rig.yaml')).toMatchObject({ ok: true });
    expect(settleRig(settled).settled).toEqual(settled);
    const frozen = (rig: RigFile) => settleRig(rig).rig.treatment!.stages.map((stage) => stage.mayHaveFrozen);
    expect(frozen(settled)).toEqual([true, false, true, false]);
  });

  it('a whole one is taken', () => {
    const treatment = {
      stages: [
        {
          kind: 'sediment',
          poreMicron: 5,
          drop: { kPa: 10, atLPerMin: 5 },
          lifeLitres: 4000,
          backwash: true,
        },
        { kind: 'uv', doseMJPerCm2: 40, flowLPerMin: 6 },
        { kind: 'chlorine', mgPerLitre: 2, minutes: 30 },
      ],
      at: 'filling',
      pump: { noFlowKPa: 310, ratedKPa: 150, ratedLPerMin: 11 },
      taps: [{ name: 'sink', afterStage: 3, use: 'kitchen' }],
      hoses: [{ afterStage: 0, lengthM: 3, boreMm: 12 }],
      target: 'two-star',
      hazards: { river: { turbidityNtu: 20, why: 'asked upstream' } },
    };
    expect(placeOf(treatment)).toBeNull();
  });
});

describe('a note on water', () => {
  const tripPlace = (note: unknown): string | null => {
    const outcome = checkTripValue({ waterNotes: [note] }, 'trip.yaml', null);
    return outcome.ok ? null : outcome.problem.place;
  };

  it.each([
    ['/waterNotes/0/on', { id: 'node/1', on: '2026-02-30', saltOk: true }],
    ['/waterNotes/0/depthM', { id: 'node/1', on: '2026-02-01', saltOk: true, depthM: -1 }],
    ['/waterNotes/0/saltOk', { id: 'node/1', on: '2026-02-01' }],
    [null, { id: 'node/1', on: '2026-02-01', saltOk: false, depthM: 12, source: 'bore', ph: 7.2 }],
  ])('is refused at %j', (place, note) => expect(tripPlace(note)).toBe(place));
});
