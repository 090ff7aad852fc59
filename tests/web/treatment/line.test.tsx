import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { GERM_CLASSES, type StageKind, type TreatmentFile } from '../../../server/contract/treatment.ts';
import { checkTreatment } from '../../../server/core/treatment/line/check-treatment.ts';
import { settleTreatment } from '../../../server/core/treatment/line/settle-treatment.ts';
import { treatmentReport } from '../../../server/core/treatment/source/treatment-report.ts';
import {
  addStage,
  isTypical,
  ofKind,
  removeStage,
  STAGE_KEYS,
  swapStages,
  TYPICAL_LINE,
  TYPICAL_PUMP,
  TYPICAL_STAGE,
} from '../../../web/treatment/edit-line.ts';
import { LineFigures } from '../../../web/treatment/LineFigures.tsx';
import { lineSteps, logsAfter } from '../../../web/treatment/line-steps.ts';
import { saidIn } from '../../../web/words/said.ts';

const KINDS = Object.keys(STAGE_KEYS) as StageKind[];
const textOf = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ')
    .replaceAll('&#x27;', "'");

const reportOf = (file: TreatmentFile) =>
  toContract(
    treatmentReport(settleTreatment(file, () => {}).treatment, {
      litresPerDay: 18,
      days: 5,
      altitudeM: 400,
      coldestNightC: 5,
    }),
  );

/** Three filters and a lamp, a pump, an untreated shower, a kitchen tap and a drinking tap. */
const LINE: TreatmentFile = {
  stages: [
    { kind: 'sediment', poreMicron: 20, drop: { kPa: 10, atLPerMin: 4 } },
    {
      kind: 'ultrafilter',
      name: 'membrane',
      poreMicron: 0.02,
      drop: { kPa: 60, atLPerMin: 4 },
      lifeLitres: 50,
    },
    { kind: 'uv', doseMJPerCm2: 40, flowLPerMin: 12, logs: { bacteria: 4, viruses: 4 } },
  ],
  pump: TYPICAL_PUMP,
  taps: [
    { name: 'shower', afterStage: 0, use: 'shower' },
    { name: 'washing-up', afterStage: 1, use: 'kitchen' },
    { name: 'drinking tap', afterStage: 3, use: 'drinking' },
  ],
  hoses: [{ afterStage: 2, lengthM: 1, boreMm: 10 }],
};

type Step =
  | { what: 'add'; kind: StageKind }
  | { what: 'remove'; at: number }
  | { what: 'swap'; at: number }
  | { what: 'kind'; at: number; kind: StageKind };

function afterStep(line: TreatmentFile, step: Step): TreatmentFile {
  if (step.what === 'add') return addStage(line, step.kind);
  const at = step.at % line.stages.length;
  if (step.what === 'swap') return swapStages(line, at);
  if (step.what === 'remove') return line.stages.length > 1 ? removeStage(line, at) : line;
  const { kind } = step;
  return { ...line, stages: line.stages.map((stage, place) => (place === at ? ofKind(stage, kind) : stage)) };
}

describe('editing a line', () => {
  it.each(KINDS)('offers for %s only what the server takes of it', (kind) => {
    const all: Record<string, unknown> = {
      poreMicron: 1,
      standsNtu: 5,
      leavesNtu: 1,
      drop: { kPa: 20, atLPerMin: 4 },
      lifeLitres: 1000,
      usedLitres: 10,
      backwash: true,
      mayHaveFrozen: false,
      recovery: 0.3,
      flowLPerMin: 2,
      doseMJPerCm2: 40,
      mgPerLitre: 2,
      minutes: 30,
    };
    const offered = Object.fromEntries(STAGE_KEYS[kind].map((key) => [key, all[key]]));
    expect(checkTreatment({ stages: [{ kind, ...offered }] })).toBeNull();
    for (const key of Object.keys(all)) {
      if (STAGE_KEYS[kind].some((one) => one === key)) continue;
      expect(checkTreatment({ stages: [{ kind, [key]: all[key] }] })).not.toBeNull();
    }
  });

  it.each(KINDS)(
    'adds an ordinary %s that the server takes, and knows it for one until it is changed',
    (kind) => {
      expect(checkTreatment({ stages: [TYPICAL_STAGE[kind]] })).toBeNull();
      expect(isTypical(TYPICAL_STAGE[kind])).toBe(true);
      expect(isTypical({ ...TYPICAL_STAGE[kind], logs: { bacteria: 1 } })).toBe(false);
    },
  );

  it('starts with a line that the server takes', () => {
    expect(checkTreatment(TYPICAL_LINE)).toBeNull();
  });

  it('keeps taps and hoses at the stages that they stood at when one before them goes', () => {
    const left = removeStage(LINE, 1);
    expect(left.stages.map(({ kind }) => kind)).toEqual(['sediment', 'uv']);
    expect(left.taps?.map(({ afterStage }) => afterStage)).toEqual([0, 1, 2]);
    expect(left.hoses?.map(({ afterStage }) => afterStage)).toEqual([1]);
  });

  it('gives the drinking tap at the end the new last stage, and the others none', () => {
    expect(addStage(LINE, 'carbon').taps?.map(({ afterStage }) => afterStage)).toEqual([0, 1, 4]);
  });

  it('drops a name that was given by the place when places change, and keeps one of the reader', () => {
    const named: TreatmentFile = {
      stages: [
        { kind: 'carbon', name: '1 carbon' },
        { kind: 'uv', name: 'lamp' },
      ],
    };
    expect(swapStages(named, 0).stages).toEqual([{ kind: 'uv', name: 'lamp' }, { kind: 'carbon' }]);
  });

  it('leaves a valid line after any edits', () => {
    const edit: fc.Arbitrary<Step> = fc.oneof(
      fc.record({ what: fc.constant('add' as const), kind: fc.constantFrom(...KINDS) }),
      fc.record({ what: fc.constant('remove' as const), at: fc.nat({ max: 5 }) }),
      fc.record({ what: fc.constant('swap' as const), at: fc.nat({ max: 5 }) }),
      fc.record({
        what: fc.constant('kind' as const),
        at: fc.nat({ max: 5 }),
        kind: fc.constantFrom(...KINDS),
      }),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
        let line = LINE;
        for (const step of edits) line = afterStep(line, step);
        expect(checkTreatment(line)).toBeNull();
      }),
    );
  });
});

describe('the line drawn', () => {
  it('runs from source to tank to pump, each tap after its stage', () => {
    const steps = lineSteps(reportOf(LINE), true);
    expect(steps.map((step) => (step.kind === 'tap' ? step.tap.name : step.kind))).toEqual([
      'source',
      'tank',
      'pump',
      'shower',
      'stage',
      'washing-up',
      'stage',
      'stage',
      'drinking tap',
    ]);
  });

  it('fills the tank behind the stages where it works on filling', () => {
    const steps = lineSteps(reportOf({ ...LINE, at: 'filling' }), false);
    expect(steps.map((step) => step.kind)).toEqual([
      'source',
      'tap',
      'stage',
      'tap',
      'stage',
      'stage',
      'tank',
      'tap',
    ]);
  });

  it('credits after its last stage what the report does', () => {
    const report = reportOf(LINE);
    const logs = logsAfter(report, report.stages.length);
    for (const germs of GERM_CLASSES) expect(logs[germs]).toBeCloseTo(report.logs[germs], 9);
  });

  it('calls the water raw before the first stage, and fit only where the target is reached', () => {
    const report = reportOf(LINE);
    const steps = lineSteps(report, true);
    expect(steps[0]?.quality).toBe('raw');
    expect(steps.at(-1)?.quality).toBe(report.meetsTarget ? 'fit' : 'part');
    const short = reportOf({ stages: [{ kind: 'sediment', poreMicron: 50 }], taps: [] });
    expect(lineSteps(short, false).every((step) => step.quality === 'raw')).toBe(true);
  });
});

describe('what the line does, in words', () => {
  const report = reportOf(LINE);
  const text = textOf(renderToStaticMarkup(<LineFigures report={report} hasPump units="metric" />));

  it('tells the flow at each tap, every kind of source with its reasons, and every caution', () => {
    for (const tap of report.taps) expect(text).toContain(tap.name);
    expect(text).toMatch(/\d L\/min estimate/);
    for (const source of report.sources) for (const reason of source.reasons) expect(text).toContain(reason);
    for (const caution of report.cautions)
      expect(text).toContain(saidIn('metric', caution).replaceAll('\u00a0', ' '));
  });

  it('says a cartridge that does not last in so many litres', () => {
    expect(report.cartridges.some((one) => (one.leftLitres ?? 0) < 0)).toBe(true);
    expect(text).toMatch(/\d L too little/);
  });

  it('says when a tap that is meant for drinking is not fit for it', () => {
    const short = reportOf({
      stages: [{ kind: 'sediment', poreMicron: 20 }],
      taps: [{ name: 'glass', afterStage: 1, use: 'drinking' }],
    });
    const shortText = textOf(
      renderToStaticMarkup(<LineFigures report={short} hasPump={false} units="metric" />),
    );
    expect(shortText).toContain('for washing only: short of the target , yet meant for drinking');
    expect(shortText).toContain('flow not known');
    expect(shortText).toContain('short by');
  });
});
