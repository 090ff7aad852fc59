import { describe, expect, test } from 'vitest';
import type { Report } from '../../../../server/contract/analysis.ts';
import { textWidthPx } from '../../../../web/kit/text-width.ts';
import {
  type HalfLabelsInput,
  halfLabels,
  LINE_PX,
  turnBackGap,
  verdictWords,
} from '../../../../web/strip/labels/gap-labels.ts';
import { sampleReply } from '../../sample-reply.ts';

const { analysis } = sampleReply();
const HEIGHT_PX = 700;

const input = (over: Partial<HalfLabelsInput> = {}): HalfLabelsInput => ({
  report: analysis.water,
  passings: analysis.passings,
  commodity: 'water',
  units: 'metric',
  selected: null,
  lengthKm: 1200,
  shown: { fromKm: 0, toKm: 1200 },
  labelPx: 122,
  topPx: 0,
  bottomPx: HEIGHT_PX,
  yOfKm: (km) => HEIGHT_PX - (km / 1200) * HEIGHT_PX,
  ...over,
});

/** A route with so many fuel stations that they stand closer than lines of text. */
function crowdedReport(count: number): Report {
  const gap = analysis.fuel.gaps[0]!;
  const stepKm = 1200 / count;
  const gaps = Array.from({ length: count }, (_, i) => ({
    ...gap,
    from: { ...gap.from, atKm: i * stepKm },
    to: { ...gap.to, atKm: (i + 1) * stepKm, name: `Pump ${i}` },
    lengthKm: stepKm + (i === 7 ? 0.1 : 0),
  }));
  return { ...analysis.fuel, gaps };
}

describe('labels beside the strip', () => {
  test('name what each gap leads to, with length', () => {
    const gaps = halfLabels(input()).filter((label) => label.kind === 'gap');
    expect(gaps.map((label) => [label.name, label.length])).toEqual([
      ['High Cairn', '240\u00a0km'],
      ['Red Gate', '320\u00a0km'],
      ['Salt Pans Roadhouse', '460\u00a0km'],
      ['Low Bridge', '180\u00a0km'],
    ]);
  });

  test('write out where to turn back in the gap that asks for most attention, or in the chosen one', () => {
    expect(turnBackGap(analysis.water, null)).toBe(1);
    expect(turnBackGap(analysis.water, 2)).toBe(2);
    const turn = halfLabels(input()).find((label) => label.kind === 'turn-back');
    expect(turn?.lines).toEqual(['turn back', 'before km\u00a0338']);
  });

  test('write none where there is enough and none is chosen', () => {
    const calm = { ...analysis.fuel, gaps: [analysis.fuel.gaps[0]!] };
    expect(turnBackGap(calm, null)).toBeNull();
  });

  test('say where the map data ends', () => {
    expect(halfLabels(input()).some((label) => label.kind === 'note')).toBe(true);
  });

  test.each([2, 40, 400, 1700])('of %i gaps never overlap', (count) => {
    const labels = halfLabels(input({ report: crowdedReport(count), commodity: 'fuel' }));
    expect(labels.length).toBeGreaterThan(0);
    labels.forEach((label, i) => {
      const above = labels[i - 1];
      if (above !== undefined) expect(label.topPx - above.topPx).toBeGreaterThanOrEqual(LINE_PX - 1e-6);
    });
  });

  test('of a crowd name only a few, the longest among them', () => {
    const labels = halfLabels(input({ report: crowdedReport(400), commodity: 'fuel' }));
    expect(labels.length).toBeLessThan(12);
    expect(labels.some((label) => label.kind === 'gap' && label.name === 'Pump 7')).toBe(true);
  });

  test('always name the chosen gap', () => {
    const labels = halfLabels(input({ report: crowdedReport(400), commodity: 'fuel', selected: 333 }));
    const chosen = labels.find((label) => label.kind === 'gap' && label.gapIndex === 333);
    expect(chosen).toMatchObject({ name: 'Pump 333', length: '3\u00a0km' });
  });
});

test('a narrow strip says the verdict in its shortest word', () => {
  expect(verdictWords('into-reserve', 110)).toBe('into the reserve');
  expect(verdictWords('into-reserve', 56)).toBe('reserve');
  expect(verdictWords('short', 60)).toBe('runs dry');
});

describe('labels of what is on the strip', () => {
  const names = (over: Partial<HalfLabelsInput>) =>
    halfLabels(input({ commodity: 'fuel', ...over })).flatMap((label) =>
      label.kind === 'gap' ? [label.name] : [],
    );
  const zoomedTo = (fromKm: number, toKm: number): Partial<HalfLabelsInput> => ({
    shown: { fromKm, toKm },
    yOfKm: (km) => HEIGHT_PX - ((km - fromKm) / (toKm - fromKm)) * HEIGHT_PX,
  });

  test('come with zooming in, every gap by its own name once there is room', () => {
    const report = crowdedReport(400);
    expect(names({ report }).length).toBeLessThan(8);
    const near = names({ report, ...zoomedTo(600, 630) });
    expect(near.toSorted()).toEqual(Array.from({ length: 10 }, (_, i) => `Pump ${200 + i}`));
  });

  test('speak of several that stand too near to each other as one, with their number', () => {
    const [gap] = crowdedReport(1).gaps;
    const towns = [200, 500, 800].flatMap((km) => Array.from({ length: 6 }, (_, i) => km + i));
    const gaps = towns.map((toKm, i) => ({
      ...gap!,
      from: { ...gap!.from, atKm: towns[i - 1] ?? 0 },
      to: { ...gap!.to, atKm: toKm, name: `Pump ${i}` },
      lengthKm: toKm - (towns[i - 1] ?? 0),
    }));
    const named = names({ report: { ...analysis.fuel, gaps } });
    const count = named.reduce((sum, name) => sum + 1 + Number(/ and (\d+) more$/.exec(name)?.[1] ?? 0), 0);
    expect(named.length).toBeLessThan(9);
    expect(count).toBe(18);
  });

  test('keep the own name of one that is not held, in whatever crowd', () => {
    const report = crowdedReport(1700);
    const gaps = report.gaps.map((gap, i) => (i === 1234 ? { ...gap, verdict: 'unknown' as const } : gap));
    expect(names({ report: { ...report, gaps } })).toContain('Pump 1234');
  });

  test('stand within the column, whatever it is called', () => {
    const report = crowdedReport(3);
    const [gap] = report.gaps;
    const named = {
      ...gap!,
      to: { ...gap!.to, name: 'Donaudampfschifffahrtsgesellschaft Tankstelle am Ufer' },
    };
    for (const labelPx of [40, 60, 122]) {
      const labels = halfLabels(input({ report: { ...report, gaps: [named] }, commodity: 'fuel', labelPx }));
      const lines = labels.flatMap((label) => (label.kind === 'gap' ? label.nameLines : []));
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(textWidthPx(line, 12.5)).toBeLessThanOrEqual(labelPx);
    }
  });
});
