import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { learnLog } from '../../../server/app/learn-log.ts';
import type { FuelLog, LogResult, WaterLog } from '../../../server/contract/answers/log.ts';
import { checkRig } from '../../../server/core/rig/check-rig.ts';
import { LogFigures } from '../../../web/log/LogFigures.tsx';
import { crewCount, roundedRates, withFuelLog, withWaterLog } from '../../../web/log/take-in.ts';
import { withCrew } from '../../../web/water/crew-start.ts';
import { sampleReply } from '../sample-reply.ts';

const { rig } = sampleReply().analysis;

function learned(lines: readonly string[]): LogResult {
  const outcome = learnLog(`${lines.join('\n')}\n`, 'own.csv', { surface: null, people: null });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}
const fuelLog = learned([
  'odometer_km,litres,full,surface,colour',
  ...[60, 61, 62, 63, 64, 99].map((litres, i) => `${1000 + 500 * i},${litres},full,gravel,red`),
  '4000,20,part,gravel,red',
]) as FuelLog;
const waterLog = learned([
  'date,litres,people,days',
  ...[11, 12, 13, 14, 15].map((litres, i) => `2026-04-0${i + 1},${litres},2,1`),
]) as WaterLog;

const shown = (result: LogResult) =>
  renderToStaticMarkup(<LogFigures learned={result} units="metric" />)
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ')
    .replaceAll('&#x27;', "'");

describe('a log taken into the rig', () => {
  it('gives the rates and the surface that they were observed on, and drops what the old rate was observed on', () => {
    const before = { ...rig, fuel: { ...rig.fuel, observed: { surface: 'sand' as const, massKg: 3000 } } };
    const after = withFuelLog(before, fuelLog);
    expect(after.fuel.observed).toEqual({ surface: 'gravel' });
    expect(after.fuel.litresPer100Km).toEqual(roundedRates(fuelLog.litresPer100Km));
    expect(checkRig(after)).toBeNull();
    const unsaid = { ...fuelLog, observed: { surface: null, massKg: null } };
    expect(withFuelLog(before, unsaid).fuel.observed).toBeUndefined();
  });

  it('gives water for all aboard, to the crew where there is one and never to both', () => {
    const plain = withWaterLog(rig, waterLog);
    expect(plain.water.litresPerDay).toEqual(roundedRates(waterLog.crew.litresPerDay));
    const crewed = withWaterLog(withCrew(rig), waterLog);
    expect(crewed.water.litresPerDay).toBeUndefined();
    expect(crewed.crew?.observedLitresPerDay).toEqual(roundedRates(waterLog.crew.litresPerDay));
    expect(checkRig(crewed)).toBeNull();
  });

  it('counts people as many as there are alike', () => {
    expect(crewCount(rig)).toBeNull();
    expect(crewCount({ ...rig, crew: { people: [{ count: 3 }, {}] } })).toBe(4);
  });

  it('never makes a range narrower by rounding, and keeps it in order', () => {
    const rate = fc.double({ min: 0.001, max: 200, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(rate, rate, rate), (three) => {
        const [low, typical, high] = [...three].sort((a, b) => a - b) as [number, number, number];
        const rounded = roundedRates({ low, typical, high });
        expect(rounded.low).toBeLessThanOrEqual(Math.max(low + 1e-4, 0.01));
        expect(rounded.high).toBeGreaterThanOrEqual(high - 1e-4);
        expect(rounded.low).toBeLessThanOrEqual(rounded.typical);
        expect(rounded.typical).toBeLessThanOrEqual(rounded.high);
      }),
    );
  });
});

describe('what a log taught', () => {
  it('shows every interval, marks the outlier and keeps it, and says what gave no rate', () => {
    const text = shown(fuelLog);
    expect(fuelLog.intervals.filter((one) => one.outlier)).toHaveLength(1);
    expect(text).toContain(`From full tank to full tank: ${fuelLog.intervals.length}`);
    expect(text.match(/outlier gravel/g)).toHaveLength(1);
    expect(fuelLog.leftOut.length).toBeGreaterThan(0);
    for (const { text: why } of fuelLog.leftOut) expect(text).toContain(why);
    for (const sentence of fuelLog.method) expect(text).toContain(sentence);
    expect(text).toContain('Columns not looked at: colour.');
  });

  it('shows for how many people the water is', () => {
    expect(shown(waterLog)).toContain('(low, typical, high, for 2 people) from 5 lines of own.csv');
  });
});
