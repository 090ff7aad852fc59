import { beforeAll, describe, expect, it } from 'vitest';
import { analyseTrip } from '../../server/app/analyse-trip.ts';
import { loadTrip } from '../../server/app/load-trip.ts';
import type { Analysis, Gap, Report } from '../../server/contract/analysis.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import type { Outcome } from '../../server/core/input/problem.ts';
import { readRigFile } from '../../server/io/rig-file.ts';
import { readTripFile } from '../../server/io/trip-file.ts';
import { tripFileSet } from '../../server/io/trip-file-set.ts';
import { demoPath } from './demo-files.ts';

const TODAY = '2026-11-01';

function unwrapped<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.problem.came);
  return outcome.value;
}

async function demoAnalysis(
  extract: string,
  form: '' | '-simple' = '-simple',
): Promise<{ analysis: Analysis; rig: RigFile; trip: TripFile }> {
  const rig = unwrapped(await readRigFile(demoPath(`rig${form}.yaml`)));
  const trip = unwrapped(await readTripFile(demoPath(`trip${form}.yaml`), rig));
  const loaded = unwrapped(
    await loadTrip(
      {
        route: { path: demoPath('route.gpx'), source: 'route.gpx' },
        extracts: [{ path: demoPath(extract), source: extract }],
        withGround: false,
        notice: null,
      },
      tripFileSet,
    ),
  );
  return { analysis: unwrapped(analyseTrip(loaded, { rig, trip }, { today: TODAY })).analysis, rig, trip };
}

let analysis: Analysis;
beforeAll(async () => {
  ({ analysis } = await demoAnalysis('orrimar.osm.pbf'));
});

const edgeName = ({ id, kind }: Gap['from']) => id ?? kind;
const linesOf = (report: Report) =>
  report.gaps.map(
    (gap) =>
      `${edgeName(gap.from)} to ${edgeName(gap.to)}: ${gap.verdict}${gap.acrossNoData ? ' across no data' : ''}`,
  );

describe('the verdicts of the demo', () => {
  it('are these for fuel: enough, short, into the reserve', () => {
    expect(linesOf(analysis.fuel)).toEqual([
      'start to node/1: enough',
      'node/1 to way/1: enough',
      'way/1 to way/1: enough',
      'way/1 to node/19: short',
      'node/19 to node/28: into-reserve across no data',
      'node/28 to end: enough',
    ]);
  });

  it('are these for water: enough, short, into the reserve and enough across no data', () => {
    expect(linesOf(analysis.water)).toEqual([
      'start to node/2: enough',
      'node/2 to node/4: enough',
      'node/4 to node/7: enough',
      'node/7 to node/7: enough',
      'node/7 to relation/1: short',
      'relation/1 to node/21: enough',
      'node/21 to node/25: into-reserve across no data',
      'node/25 to node/27: enough',
      'node/27 to node/29: enough across no data',
      'node/29 to end: enough',
    ]);
  });

  it('have the longest dry stretch short, with a spring, a bore, a tank and a private well inside that do not count', () => {
    const dry = analysis.water.gaps[analysis.water.longest]!;
    expect(dry.verdict).toBe('short');
    expect(dry.lengthKm).toBeGreaterThan(600);
    const inside = analysis.passings.filter(
      ({ commodity, atKm }) => commodity === 'water' && atKm > dry.from.atKm && atKm < dry.to.atKm,
    );
    expect(inside.map(({ id }) => id)).toEqual(['node/10', 'node/12', 'node/13', 'way/2', 'node/16']);
    expect(inside.every(({ counts }) => !counts)).toBe(true);
  });

  it('do not hang by a hair: no margin or empty tank within half a litre of another verdict', () => {
    for (const gap of [...analysis.fuel.gaps, ...analysis.water.gaps]) {
      expect(Math.abs(gap.marginL)).toBeGreaterThan(0.5);
      expect(Math.abs(gap.arriveL)).toBeGreaterThan(0.5);
    }
  });

  it('need no more cans than the rig owns', () => {
    for (const report of [analysis.fuel, analysis.water]) {
      for (const gap of report.gaps) expect(gap.extraCans).toBeLessThanOrEqual(report.cansOwned);
    }
    expect(analysis.fuel.gaps.some(({ extraCans }) => extraCans > 0)).toBe(true);
  });

  it('agree with plain arithmetic on the gaps’ edges', () => {
    for (const gap of analysis.fuel.gaps) {
      const wayKm = (gap.lengthKm + gap.from.detourKm + gap.to.detourKm) * 1.05;
      const needL = wayKm * 0.17;
      expect(gap.needL).toBeCloseTo(needL, 9);
      expect(gap.marginL).toBeCloseTo(127 - needL - 17 - 0.1 * needL, 9);
    }
    // Each night ends a whole day since the one before; a rest day is a whole day more. After the last night on the way
    // to a place it is driving at 35 km/h.
    const stays = [
      { atKm: 418, days: 1 },
      { atKm: 1046, days: 2 },
    ];
    const daysAt = (km: number) => {
      const nights = analysis.nights.filter(({ atKm }) => atKm < km);
      const rests = stays.filter(({ atKm }) => atKm < km).reduce((sum, { days }) => sum + days, 0);
      const lastNightKm = nights.at(-1)?.atKm ?? 0;
      return nights.length + rests + ((km - lastNightKm) * 1.05) / 35 / 24;
    };
    for (const gap of analysis.water.gaps) {
      // Off the route by days of driving.
      const detourDays = ((gap.from.detourKm + gap.to.detourKm) * 1.05) / (7 * 35);
      const needL = (daysAt(gap.to.atKm) - daysAt(gap.from.atKm) + detourDays) * 18;
      expect(gap.needL).toBeCloseTo(needL, 9);
      expect(gap.marginL).toBeCloseTo(70 - needL - 36, 9);
    }
  });
});

describe('the demo’s rig told in full, on surfaces as the roads are mapped', () => {
  let full: Analysis;
  beforeAll(async () => {
    ({ analysis: full } = await demoAnalysis('orrimar.osm.pbf', ''));
  });

  it('does not reach the water behind the ground without a map, so that nobody knows whether there is some', () => {
    const across = full.water.gaps.find(({ from }) => from.id === 'node/21')!;
    expect(across).toMatchObject({ verdict: 'unknown', acrossNoData: true });
  });

  it('needs more fuel over the sand: all its cans, for the same three kinds of verdict', () => {
    expect(linesOf(full.fuel)).toEqual(linesOf(analysis.fuel));
    const short = full.fuel.gaps.find(({ verdict }) => verdict === 'short')!;
    expect(short.extraCans).toBe(full.fuel.cansOwned);
    expect(short.extraL).toBeGreaterThan(analysis.fuel.gaps[3]!.extraL);
  });

  it('makes the quarry’s spring fit to drink, and not Anna spring, which is only implied', () => {
    const counts = (id: string) => full.passings.find((passing) => passing.id === id)?.counts;
    expect([counts('node/24'), counts('node/10')]).toEqual([true, false]);
    expect(full.water.gaps.map(({ verdict }) => verdict)).toEqual(
      expect.arrayContaining(['enough', 'short', 'unknown']),
    );
  });

  it('tells its masses within what is permitted, and what its line does', () => {
    const [departure] = full.mass!.states;
    expect(departure!.totalKg).toBeLessThan(3500);
    expect(departure!.payloadLeftKg).toBeGreaterThan(0);
    expect(full.treatment!.meetsTarget).toBe(true);
  });

  it('does not hang by a hair', () => {
    for (const gap of [...full.fuel.gaps, ...full.water.gaps]) {
      expect(Math.abs(gap.marginL)).toBeGreaterThan(0.5);
      expect(Math.abs(gap.arriveL)).toBeGreaterThan(0.5);
    }
  });
});

describe('the supplies of the demo', () => {
  it('count or not as the README says', () => {
    const counting = new Set(analysis.passings.filter(({ counts }) => counts).map(({ id }) => id));
    expect([...counting].sort()).toEqual(
      [
        'node/1',
        'node/2',
        'node/4',
        'way/1',
        'node/7',
        'relation/1',
        'node/19',
        'node/21',
        'node/25',
        'node/27',
        'node/28',
        'node/29',
      ].sort(),
    );
  });

  it('are passed twice at Ketta and on the lookout road, once elsewhere', () => {
    const times = new Map<string, number>();
    for (const { id } of analysis.passings) times.set(id, (times.get(id) ?? 0) + 1);
    const twice = [...times].filter(([, count]) => count === 2).map(([id]) => id);
    expect(twice.sort()).toEqual(['node/7', 'node/8', 'way/1']);
    expect(Math.max(...times.values())).toBe(2);
  });

  it('merge the node of the station at Ketta into its area', () => {
    const ketta = analysis.passings.find(({ id }) => id === 'way/1');
    expect(ketta?.alsoIds).toEqual(['node/6']);
    expect(analysis.passings.some(({ id }) => id === 'node/6')).toBe(false);
  });

  it('show the old tags at Mine camp one level lower', () => {
    const mine = analysis.passings.find(({ id }) => id === 'node/19');
    expect(mine?.evidence).toBe('implied');
    expect(mine?.reasons.map(({ code }) => code)).toContain('stale');
  });

  it('leave nothing out', () => {
    expect(analysis.skipped).toEqual([]);
  });

  it('offer the town off the road as a rescue of both short gaps', () => {
    for (const [report, id] of [
      [analysis.fuel, 'node/17'],
      [analysis.water, 'node/18'],
    ] as const) {
      const short = report.gaps.find(({ verdict }) => verdict === 'short');
      expect(short?.rescue.find((rescue) => rescue.id === id)?.counts).toBe(true);
    }
  });
});

describe('the three forms of the map', () => {
  it.each(['orrimar.osm', 'orrimar.overpass.json'])(
    'give with %s the analysis of the pbf',
    async (extract) => {
      const other = await demoAnalysis(extract);
      // All but the name of the file.
      const extracts = analysis.extracts.map((one) => ({ ...one, source: extract }));
      expect(other.analysis).toEqual({ ...analysis, extracts });
    },
  );
});
