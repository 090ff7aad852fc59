import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundStep, rulerMarks } from '../../../web/strip/ruler.ts';
import { stepAlong } from '../../../web/strip/step-along.ts';
import { sampleReply } from '../sample-reply.ts';

const route = (toKm: number) => ({ fromKm: 0, toKm });

describe('the ruler', () => {
  test('has the same round figures where only a stretch of the route is shown', () => {
    const marks = rulerMarks({ fromKm: 333, toKm: 412 }, 700, 46, 'metric');
    expect(marks.map(({ figure }) => figure)).toEqual([340, 350, 360, 370, 380, 390, 400, 410]);
  });

  test('stands at round figures of the unit shown', () => {
    expect(rulerMarks(route(1450), 700, 46, 'metric').map((mark) => mark.figure)).toEqual(
      Array.from({ length: 15 }, (_, i) => i * 100),
    );
    const miles = rulerMarks(route(1450), 700, 46, 'us');
    expect(miles.map((mark) => mark.figure)).toEqual([0, 100, 200, 300, 400, 500, 600, 700, 800, 900]);
    expect(miles[1]!.atKm).toBeCloseTo(160.9344, 9);
  });

  test('takes steps of 1, 2 or 5 times a power of ten', () => {
    expect([0.03, 1, 1.1, 2, 30, 70, 200, 501].map(roundStep)).toEqual([0.05, 1, 2, 2, 50, 100, 200, 1000]);
  });

  test('keeps its marks on the route and apart', () => {
    const lengths = fc.double({ min: 0.5, max: 20_000, noNaN: true });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 60, max: 2000 }), (lengthKm, heightPx) => {
        const marks = rulerMarks(route(lengthKm), heightPx, 46, 'metric');
        marks.forEach((mark, i) => {
          expect(mark.atKm).toBeLessThanOrEqual(lengthKm);
          const above = marks[i + 1];
          if (above !== undefined)
            expect(((above.atKm - mark.atKm) / lengthKm) * heightPx).toBeGreaterThan(45.9);
        });
      }),
    );
  });

  test('is empty for a route without length', () => {
    expect(rulerMarks(route(0), 700, 46, 'metric')).toEqual([]);
  });
});

describe('keys along the strip', () => {
  const { analysis } = sampleReply();
  const press = (atKm: number | null, key: string) =>
    stepAlong(analysis, 'metric', { atKm, visibleKm: analysis.route.lengthKm }, key);

  test('arrows go to the next round place and stop at the ends', () => {
    expect(press(null, 'ArrowUp')).toBe(10);
    expect(press(412, 'ArrowUp')).toBe(420);
    expect(press(412, 'ArrowDown')).toBe(410);
    expect(press(0, 'ArrowDown')).toBe(0);
    expect(press(1200, 'ArrowRight')).toBe(1200);
  });

  test('page keys go from supply to supply', () => {
    expect(press(0, 'PageUp')).toBe(180);
    expect(press(180, 'PageUp')).toBe(640);
    expect(press(960, 'PageUp')).toBe(1200);
    expect(press(640, 'PageDown')).toBe(180);
    expect(press(100, 'PageDown')).toBe(0);
  });

  test('Home and End lead to the ends, other keys nowhere', () => {
    expect(press(500, 'Home')).toBe(0);
    expect(press(500, 'End')).toBe(1200);
    expect(press(500, 'a')).toBeNull();
  });
});
