import { renderToStaticMarkup } from 'react-dom/server';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import {
  type ComparedCommodity,
  type ComparedMass,
  Comparison,
} from '../../../server/contract/answers/compare.ts';
import { ComparePicture } from '../../../web/compare/ComparePicture.tsx';
import { CompareTable } from '../../../web/compare/CompareTable.tsx';
import { bestOf } from '../../../web/compare/criteria.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();

/** As the server sums it up; `extraL` over all gaps is the most of any one. */
function compared(report: typeof analysis.fuel, more: Partial<ComparedCommodity> = {}): ComparedCommodity {
  const { gaps, capacityL, canL, cansOwned, tightest } = report;
  const worst = gaps[tightest]!;
  const extraL = Math.max(...gaps.map((gap) => gap.extraL));
  const extraCans = Math.ceil(extraL / canL);
  return {
    capacityL,
    canL,
    cansOwned,
    worst: { index: tightest, ...worst },
    extraL,
    extraCans,
    cansMissing: Math.max(0, extraCans - cansOwned),
    verdicts: { enough: 1, 'into-reserve': 1, short: 1, unknown: 0 },
    gaps: gaps.map((gap) => ({ ...gap, fromKm: gap.from.atKm, toKm: gap.to.atKm })),
    ...more,
  };
}

const at = { when: 'full' as const, atKm: null };
const MASS: ComparedMass = {
  departure: {
    kind: 'departure',
    worstFor: [],
    atKm: null,
    fuelL: 127,
    waterL: 70,
    totalKg: 2900,
    payloadLeftKg: 100,
    front: null,
    rear: null,
    sideKg: null,
    cgHeightM: null,
    stabilityFactor: null,
  },
  totalKg: { value: 2950, ...at },
  payloadLeftKg: { value: -50, ...at },
  front: { kg: 1300, limitKg: 1400, leftKg: 100, ...at },
  rear: { kg: 1650, limitKg: 1600, leftKg: -50, ...at },
  sideKg: { value: -40, ...at },
  cgHeightM: null,
  stabilityFactor: { value: 1.05, ...at },
};

const COMPARISON: Comparison = {
  route: { name: 'Low Harbour to High Cairn', lengthKm: 1200 },
  notice: null,
  extracts: [],
  rigs: [
    {
      name: 'Tank ahead of the axle',
      fuel: compared(analysis.fuel),
      water: compared(analysis.water),
      days: { slow: 4.3, typical: 3.6, fast: 2.9 },
      mass: {
        ...MASS,
        payloadLeftKg: { value: 20, ...at },
        rear: { kg: 1550, limitKg: 1600, leftKg: 50, ...at },
      },
      cautions: [],
    },
    {
      name: 'Tank at the back',
      fuel: compared(analysis.fuel, { extraL: 0, extraCans: 0, cansMissing: 0 }),
      water: compared(analysis.water),
      days: { slow: 4.3, typical: 3.6, fast: 2.9 },
      mass: MASS,
      cautions: [],
    },
    {
      name: 'Bare',
      fuel: compared(analysis.fuel),
      water: compared(analysis.water),
      days: { slow: 4.3, typical: 3.6, fast: 2.9 },
      mass: null,
      cautions: [],
    },
  ],
  cautions: [],
  standing: [],
};

const textOf = (markup: string) => markup.replace(/<[^>]*>/g, ' ').replace(/[\s\u00a0]+/g, ' ');
const rowOf = (markup: string, name: string) =>
  textOf((markup.match(/<tr>.*?<\/tr>/g) ?? []).find((row) => row.includes(`>${name}<`)) ?? '');

describe('rigs side by side', () => {
  const markup = renderToStaticMarkup(<CompareTable comparison={COMPARISON} units="metric" />);

  it('are what the server sends', () => {
    expect(Compile(Comparison).Errors(COMPARISON)).toEqual([]);
  });

  it('have a column each, named', () => {
    expect(markup.match(/scope="col"/g)).toHaveLength(1 + COMPARISON.rigs.length);
    for (const { name } of COMPARISON.rigs) expect(markup).toContain(name);
  });

  it('say in words what is over a limit, and what is not told', () => {
    expect(rowOf(markup, 'Rear axle')).toContain('1,650 kg 50 kg over its limit');
    expect(rowOf(markup, 'Payload left')).toContain('50 kg too heavy not told');
    expect(rowOf(markup, 'Front axle')).toContain('1,300 kg 100 kg below its limit');
  });

  it('name the best of a row where there is one, in words as well', () => {
    expect(rowOf(markup, 'Rear axle')).toMatch(/1,550 kg \(best\)/);
    expect(rowOf(markup, 'Extra fuel cans')).toMatch(/none \(best\)/);
    expect(rowOf(markup, 'Days, slow pace')).not.toContain('best');
    expect(rowOf(markup, 'Fuel, worst stretch')).not.toContain('best');
  });

  it('never call a rig best by what is not told', () => {
    const told = { text: '1', score: 1 };
    expect(bestOf([told, { text: 'not told', score: null }])).toEqual([false, false]);
    expect(bestOf([told, { text: '2', score: 2 }])).toEqual([false, true]);
    expect(bestOf([])).toEqual([]);
  });
});

describe('the picture of several rigs', () => {
  const markup = renderToStaticMarkup(<ComparePicture comparison={COMPARISON} units="metric" />);

  it('has a stretch for each gap of each rig and a key of every verdict', () => {
    const gaps = COMPARISON.rigs.reduce((sum, rig) => sum + rig.fuel.gaps.length + rig.water.gaps.length, 0);
    expect(markup.match(/class="compare-stretch"/g)).toHaveLength(gaps + 4);
  });

  it('draws a short stretch as hatching of its own commodity, not by colour alone', () => {
    const short = COMPARISON.rigs.flatMap((rig) => rig.water.gaps).filter((gap) => gap.verdict === 'short');
    expect(short.length).toBeGreaterThan(0);
    // One more is in the key.
    expect(markup.match(/fill="url\(#[^"]*water-hatch\)"/g)).toHaveLength(short.length + 1);
  });

  it('says the same in words', () => {
    expect(markup).toContain('Bare: fuel 1 enough, 1 into the reserve, 1 runs dry; water');
  });
});
