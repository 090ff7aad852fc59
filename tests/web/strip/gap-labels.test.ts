import { describe, expect, test } from 'vitest';
import type { Report } from '../../../server/contract/analysis.ts';
import {
  detailWords,
  type HalfLabelsInput,
  halfLabels,
  LINE_PX,
  turnBackGap,
} from '../../../web/strip/gap-labels.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const HEIGHT_PX = 700;

const input = (over: Partial<HalfLabelsInput> = {}): HalfLabelsInput => ({
  report: analysis.water,
  passings: analysis.passings,
  commodity: 'water',
  units: 'metric',
  selected: null,
  lengthKm: 1200,
  halfWidthPx: 122,
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
      ['Salt Pans Roadho…', '460\u00a0km'],
      ['Low Bridge', '180\u00a0km'],
    ]);
  });

  test('write out where to turn back in the gap that asks for most attention, or in the chosen one', () => {
    expect(turnBackGap(analysis.water, null)).toBe(1);
    expect(turnBackGap(analysis.water, 2)).toBe(2);
    const turn = halfLabels(input()).find((label) => label.kind === 'turn-back');
    expect(turn?.lines).toEqual(['turn back', 'before km\u00a0339']);
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

test('a narrow strip says the verdict before the length, in its shortest word', () => {
  expect(detailWords('into-reserve', '592 km', 140)).toEqual({
    verdict: 'into the reserve',
    length: '592 km',
  });
  expect(detailWords('into-reserve', '592 km', 110)).toEqual({ verdict: 'into the reserve', length: null });
  expect(detailWords('into-reserve', '592 km', 56)).toEqual({ verdict: 'reserve', length: null });
  expect(detailWords('enough', '592 km', 56)).toEqual({ verdict: '', length: '592 km' });
});
