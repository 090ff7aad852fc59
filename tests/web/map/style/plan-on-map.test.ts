import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestKm } from '../../../../web/map/geometry/nearest-km.ts';
import { mapStyle } from '../../../../web/map/style/map-style.ts';
import { eighthOf } from '../../../../web/map/style/name-anchors.ts';
import { LIGHT } from '../../../../web/map/style/palette.ts';
import { canLines, inRuns, planOnMap, planPieces } from '../../../../web/map/style/plan-on-map.ts';
import { drawnPlan } from '../../drawn-plan.ts';
import { sampleReply } from '../../sample-reply.ts';

const reply = sampleReply();
const { map, analysis } = reply;
const plan = drawnPlan();
const [carry] = plan.plan.carries;
/** Straight north, a vertex every hundred kilometres. */
const LINE = {
  coordinates: [0, 1, 2, 3, 4].map((lat) => [10, lat]),
  atKm: [0, 100, 200, 300, 400],
};

describe('the stretches over which cans are carried', () => {
  test('run along the route from the filling to the last pouring', () => {
    const [line] = canLines(LINE, [{ ...carry!, fromKm: 150, toKm: 325 }]);
    expect(line!.properties).toEqual({ commodity: 'fuel', cans: 2 });
    expect(line!.geometry.coordinates).toEqual([
      [10, 1.5],
      [10, 2],
      [10, 3],
      [10, 3.25],
    ]);
  });

  test('repeat no vertex at which they begin or end', () => {
    const [line] = canLines(LINE, [{ ...carry!, fromKm: 100, toKm: 300 }]);
    expect(line!.geometry.coordinates).toHaveLength(3);
  });

  test('are not drawn where they have no length or there is no route', () => {
    expect(canLines(LINE, [{ ...carry!, fromKm: 200, toKm: 200 }])).toEqual([]);
    expect(canLines({ coordinates: [], atKm: [] }, [carry!])).toEqual([]);
  });

  test('begin and end where they were asked to, wherever that is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 399, noNaN: true }),
        fc.double({ min: 0.5, max: 400, noNaN: true }),
        (a, b) => {
          const fromKm = Math.min(a, b);
          const toKm = Math.max(a, b) + 0.1;
          const ends = canLines(LINE, [{ ...carry!, fromKm, toKm }])[0]!.geometry.coordinates;
          const kmOf = (at: number[] | undefined) => nearestKm(LINE, at![0]!, at![1]!);
          expect(kmOf(ends[0])).toBeCloseTo(fromKm, 6);
          expect(kmOf(ends.at(-1))).toBeCloseTo(Math.min(toKm, 400), 6);
        },
      ),
    );
  });
});

describe('the route by the plan', () => {
  const pieces = planPieces(plan.plan.levels.fuel, analysis.fuel);

  test('is in pieces that tile it', () => {
    expect(pieces[0]!.fromKm).toBe(0);
    expect(pieces.at(-1)!.toKm).toBe(1200);
    expect(pieces.slice(1).map(({ fromKm }) => fromKm)).toEqual(pieces.slice(0, -1).map(({ toKm }) => toKm));
  });

  test('is as wide as what is in the tanks halfway along each piece, within a twelfth of them', () => {
    const at = pieces.find(({ fromKm, toKm }) => fromKm <= 150 && 150 < toKm)!;
    const middleKm = (at.fromKm + at.toKm) / 2;
    expect(at.share).toBeCloseTo((100 - middleKm * 0.2) / 127, 9);
    const firstLeg = pieces.filter(({ toKm }) => toKm <= 300);
    for (const { fromKm, toKm } of firstLeg) expect((toKm - fromKm) * 0.2).toBeLessThanOrEqual(127 / 12);
    expect(pieces.find(({ fromKm }) => fromKm === 300)!.share).toBeGreaterThan(0.7);
  });

  test('is never calm without cover: cut where that begins and ends', () => {
    const water = planPieces(plan.plan.levels.water, analysis.water);
    const bare = water.filter(({ noCover }) => noCover);
    expect([bare[0]!.fromKm, bare.at(-1)!.toKm]).toEqual([1000, 1100]);
    expect(water.every(({ noCover, fromKm }) => noCover === (fromKm >= 1000 && fromKm < 1100))).toBe(true);
  });
});

describe('what the map shows of a plan', () => {
  const shown = planOnMap(reply, plan, 'metric')!;
  const labels = (list: typeof shown.marks) =>
    list.map(({ properties }) => `${properties.what}: ${properties.label.replaceAll(/\s/g, ' ')}`);

  test('is where to turn back and how many cans are full, in words', () => {
    expect(labels(shown.marks)).toEqual([
      'turn-back: turn back, km 812 (fuel)',
      'turn-back-later: turn back, km 700 (water)',
      'cans: 2 fuel cans',
      'cans: 1 fuel can',
    ]);
    expect(labels(planOnMap(reply, plan, 'us')!.marks)[0]).toBe('turn-back: turn back, mile 504 (fuel)');
  });

  test('stands at its place of the route', () => {
    const [turn, , cans] = shown.marks.map(({ geometry: { coordinates } }) =>
      nearestKm(map.line, coordinates[0]!, coordinates[1]!),
    );
    expect(turn).toBeCloseTo(812, 3);
    expect(cans).toBeCloseTo(435, 3);
  });

  test('is fuel left of the way and water right of it', () => {
    // East, north, west, south as eighths of a turn.
    expect([eighthOf(1, 0), eighthOf(0, 1), eighthOf(-1, 0), eighthOf(0, -1)]).toEqual([0, 2, 4, 6]);
    expect(eighthOf(1, -1)).toBe(7);
    const north = { ...reply, map: { ...map, line: LINE } };
    const side = (commodity: 'fuel' | 'water') => {
      const one = drawnPlan();
      one.plan.carries = [{ ...carry!, commodity, fromKm: 100, toKm: 300, pourAtKm: [300], cans: 1 }];
      return planOnMap(north, one, 'metric')!.marks.at(-1)!.properties.side;
    };
    expect([side('fuel'), side('water')]).toEqual([4, 0]);
  });

  test('marks the supplies that are used, as the style draws them', () => {
    expect([...shown.used]).toEqual(['fuel node/1']);
    const { supplies } = mapStyle(map, LIGHT, { plan: shown }).sources as unknown as Record<
      string,
      { data: { features: { properties: { id: string; commodity: string; used: boolean } }[] } }
    >;
    const used = supplies!.data.features.filter(({ properties }) => properties.used);
    expect(used.map(({ properties }) => `${properties.commodity} ${properties.id}`)).toEqual(['fuel node/1']);
  });

  test('is nothing where no plan was found: the route stays drawn by its gaps', () => {
    expect(planOnMap(reply, { ...plan, plan: { ...plan.plan, status: 'none' } }, 'metric')).toBeNull();
    const route = mapStyle(map, LIGHT, { plan: null }).sources.route;
    expect(route).toEqual(mapStyle(map, LIGHT).sources.route);
    expect(route).not.toEqual(mapStyle(map, LIGHT, { plan: shown }).sources.route);
  });

  test('leaves out where to turn back at the very supply that lies ahead', () => {
    const ahead = drawnPlan();
    ahead.whatIf.turnBacks[0]!.atKm = ahead.whatIf.turnBacks[0]!.towards.atKm;
    const points = planOnMap(reply, ahead, 'metric')!.marks.filter(
      ({ properties }) => properties.what !== 'cans',
    );
    expect(labels(points)).toEqual(['turn-back-later: turn back, km 700 (water)']);
  });

  test('takes the place of the gaps: no verdict of theirs is drawn, but they can still be chosen', () => {
    const edges = mapStyle(map, LIGHT, { plan: shown }).sources.gaps as unknown as {
      data: { features: { properties: { gap?: number; verdict: string } }[] };
    };
    const of = edges.data.features.map(({ properties }) => properties);
    expect(of.filter(({ gap }) => gap !== undefined).every(({ verdict }) => verdict === '')).toBe(true);
    expect(of.filter(({ gap }) => gap === undefined).map(({ verdict }) => verdict)).toEqual([
      'enough',
      'enough',
      'enough',
    ]);
  });
});

describe('pieces drawn as one', () => {
  const piece = (fromKm: number, share: number, more: object = {}) =>
    ({ state: 'left', noCover: false, share, fromKm, toKm: fromKm + 10, ...more }) as const;

  test('are those that follow on each other at about one level', () => {
    const pieces = [piece(0, 0.5), piece(10, 0.49), piece(20, 0.47), piece(30, 0.3), piece(50, 0.3)];
    expect(inRuns(pieces).map(({ fromKm, toKm, share }) => [fromKm, toKm, share])).toEqual([
      [0, 30, 0.5],
      [30, 40, 0.3],
      [50, 60, 0.3],
    ]);
  });

  test('are not those of which one has no map data, or another state', () => {
    const pieces = [piece(0, 0.5), piece(10, 0.5, { noCover: true }), piece(20, 0.5, { state: 'reserve' })];
    expect(inRuns(pieces)).toEqual(pieces);
  });
});
