import { readFile, writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { SupplyReasonCode } from '../../server/core/phrases/supply.ts';
import type { Judging } from '../../server/core/supply/judge/rules.ts';
import { REASON_RULES } from '../../server/core/supply/tags/reasons.ts';
import { openingHours } from '../../server/io/opening-hours.ts';
import { textOf } from '../../server/words/words-of.ts';
import { pointsOf } from '../core/supply/judged.ts';
import {
  FAR_SUPPLIES,
  FRESH,
  isCalm,
  type MapObject,
  MIDDLE,
  osmXml,
  StraightRoute,
  straightMap,
} from './straight-route.ts';
import type { Trap, TrapRig, TrapTrip } from './tables/trap.ts';
import { TRAPS } from './tables/traps.ts';

const COMMODITIES = ['fuel', 'water'] as const satisfies readonly Commodity[];

/** The tenth of July that comes next year: dates of maps go by the clock, so the trip's does too. */
const JULY = `${new Date().getUTCFullYear() + 1}-07-10`;
/** It is reached on the second or third day. */
const REACHED = { earliest: `${JULY.slice(0, 8)}11T12:00`, latest: `${JULY.slice(0, 8)}12T15:00` };
const TODAY = new Date().toISOString().slice(0, 10);

const RIGS: Record<TrapRig, { yaml: (rig: string) => string; judging: Partial<Judging> }> = {
  diesel: { yaml: (rig) => rig, judging: {} },
  petrol: { yaml: (rig) => rig.replace('kind: diesel', 'kind: petrol'), judging: { fuelKind: 'petrol' } },
  // A tank for LPG is filled to four fifths.
  lpg: {
    yaml: (rig) => rig.replace('kind: diesel', 'kind: lpg').replace('litres: 100', 'litres: 125'),
    judging: { fuelKind: 'lpg' },
  },
  heavy: {
    yaml: (rig) =>
      `${rig}\nvehicle: { kerbKg: 6000, axleKg: { front: 2500, rear: 3500 }, wheelbaseM: 4, permitted: { totalKg: 7500, frontKg: 3500, rearKg: 5000 } }\n`,
    judging: { isHeavy: true },
  },
};
const TRIPS: Record<TrapTrip, { trip: object; judging: Partial<Judging> }> = {
  undated: { trip: {}, judging: { on: null } },
  july: {
    trip: { departure: JULY },
    judging: { on: JULY, seasonDays: [`${JULY.slice(0, 8)}11`, `${JULY.slice(0, 8)}12`] },
  },
  'july at eight': {
    trip: { departure: JULY, departureHour: 8 },
    judging: { on: JULY, seasonDays: [`${JULY.slice(0, 8)}11`, `${JULY.slice(0, 8)}12`], reachedAt: REACHED },
  },
};

const judgingFor = ({ rig, trip }: Trap): Partial<Judging> => ({
  today: TODAY,
  readHours: openingHours,
  ...RIGS[rig].judging,
  ...TRIPS[trip].judging,
});

const pointFor = (trap: Trap) =>
  pointsOf(trap.tags, judgingFor(trap), { lat: MIDDLE.lat, lon: MIDDLE.lon, editedAt: FRESH }).find(
    ({ commodity }) => commodity === trap.commodity,
  );

/** What a row comes to, as it is expected. */
const expectationOf = ({ evidence, counts, waterClass, reason }: Trap) => ({
  evidence,
  counts,
  ...(waterClass === undefined ? {} : { waterClass }),
  reason,
});

/** The same of a point; a reason that was found although none was asked for is not looked at. */
const foundOf = (
  trap: Trap,
  point: Pick<Analysis['passings'][number], 'evidence' | 'counts' | 'waterClass'> & {
    reasons: readonly { code: string }[];
  },
) => ({
  evidence: point.evidence,
  counts: point.counts,
  ...(trap.waterClass === undefined ? {} : { waterClass: point.waterClass }),
  reason: point.reasons.some(({ code }) => code === trap.reason) ? trap.reason : null,
});

const inShort = ({ name, rig, trip, source }: Trap): string => `${name} (${rig}, ${trip}; ${source})`;

describe('a trap by its tags', () => {
  it('is one of at least two hundred, each once, with its source', () => {
    expect(TRAPS.length).toBeGreaterThanOrEqual(200);
    expect(new Set(TRAPS.map((trap) => `${trap.commodity} ${inShort(trap)}`)).size).toBe(TRAPS.length);
    expect(TRAPS.filter(({ source }) => source === '')).toEqual([]);
  });

  it.each(TRAPS.map((trap) => [`${trap.commodity}: ${inShort(trap)}`, trap] as const))('%s', (_, trap) => {
    const point = pointFor(trap);
    expect(point).toBeDefined();
    expect(point && foundOf(trap, point)).toEqual(expectationOf(trap));
    for (const reason of point?.reasons ?? []) expect(textOf(reason)).toMatch(/\S{3}/);
    if (!trap.counts) {
      expect(REASON_RULES[trap.reason as SupplyReasonCode].effect, 'what keeps it out').not.toBe('advises');
    }
  });
});

/** The traps as objects in the middle of the straight route, the first with this id. */
const objectsOf = (traps: readonly Trap[]): MapObject[] =>
  traps.map(({ tags }, index) => ({
    type: 'node',
    id: 1000 + index,
    ...MIDDLE,
    tags,
    version: 1,
    timestamp: FRESH,
  }));

const GROUPS = (Object.keys(RIGS) as TrapRig[]).flatMap((rig) =>
  (Object.keys(TRIPS) as TrapTrip[]).flatMap((trip) => {
    const traps = TRAPS.filter((trap) => trap.rig === rig && trap.trip === trip);
    return traps.length === 0 ? [] : [{ rig, trip, traps }];
  }),
);

describe('on the straight route', () => {
  let straight: StraightRoute;
  let plainRig = '';
  beforeAll(async () => {
    straight = await StraightRoute.open();
    plainRig = await readFile(straight.path('rig.yaml'), 'utf8');
  });
  afterAll(() => straight.close());

  async function answers(rig: TrapRig, trip: TrapTrip, traps: readonly Trap[]) {
    await writeFile(straight.path('rig.yaml'), RIGS[rig].yaml(plainRig));
    const objects = straightMap({ fuel: null, water: null, more: [...objectsOf(traps), ...FAR_SUPPLIES] });
    return straight.analysis({ 'map.osm': osmXml({ objects }) }, TRIPS[trip].trip);
  }

  const passingOf = (analysis: Analysis, { commodity }: Trap, index: number) =>
    analysis.passings.find((one) => one.id === `node/${1000 + index}` && one.commodity === commodity);

  it.each(GROUPS.map((group) => [`${group.rig}, ${group.trip}`, group] as const))(
    'no trap makes a stretch hold, and each is told as expected: %s',
    async (_, { rig, trip, traps }) => {
      const denied = traps.filter(({ counts }) => !counts);
      const analysis = await answers(rig, trip, denied);
      const told = COMMODITIES.flatMap((commodity) => {
        if (!isCalm(analysis, commodity)) return [];
        const by = denied.filter((trap, index) => passingOf(analysis, trap, index)?.counts === true);
        return by.map(
          (trap) =>
            `"Every stretch of ${commodity} holds with the reserve", though all there is on 1,200 km is ${inShort(trap)}`,
        );
      });
      expect(told).toEqual([]);
      const wrong = denied.flatMap((trap, index) => {
        const passing = passingOf(analysis, trap, index);
        const found = passing === undefined ? 'no supply at all' : foundOf(trap, passing);
        const expected = expectationOf(trap);
        return JSON.stringify(found) === JSON.stringify(expected)
          ? []
          : [
              `${inShort(trap)}: a traveller is told ${JSON.stringify(found)} in place of ${JSON.stringify(expected)}: ${passing?.reasons.map(({ text }) => text).join('. ')}`,
            ];
      });
      expect(wrong).toEqual([]);
      // Nothing counts, so all of them together make no answer better than none of them.
      const bare = await answers(rig, trip, []);
      for (const commodity of COMMODITIES) {
        expect(isCalm(bare, commodity)).toBe(false);
        // A file of fuel alone covers no water: there the answer is another for want of data.
        if (!denied.some((trap) => trap.commodity === commodity)) continue;
        expect(
          analysis[commodity].gaps.map(({ verdict, marginL, lengthKm }) => [verdict, marginL, lengthKm]),
        ).toEqual(bare[commodity].gaps.map(({ verdict, marginL, lengthKm }) => [verdict, marginL, lengthKm]));
      }
      expect(
        analysis.passings.flatMap(({ reasons }) => reasons).filter(({ text }) => text.trim() === ''),
      ).toEqual([]);
    },
  );

  it('a plan goes by none of those that hours leave out, as gaps do not', { tags: 'slow' }, async () => {
    await writeFile(straight.path('rig.yaml'), plainRig);
    const denied = TRAPS.filter(
      ({ rig, trip, counts }) => rig === 'diesel' && trip === 'july at eight' && !counts,
    );
    // Beside the one station and the one tap, a plan goes by none of them.
    const beside = straightMap({ more: objectsOf(denied) });
    const { plan } = JSON.parse(
      await straight.run({ 'map.osm': osmXml({ objects: beside }) }, TRIPS['july at eight'].trip, {
        command: 'plan',
        more: ['--json'],
      }),
    ) as { plan: Plan };
    const used = plan.stops.flatMap(({ passings }) => passings).filter((passing) => passing.used);
    expect(used.map(({ id }) => id).filter((id) => !['node/1', 'node/2'].includes(id))).toEqual([]);
  });

  it.each(GROUPS.map((group) => [`${group.rig}, ${group.trip}`, group] as const))(
    'what is in use counts, and each makes its stretches hold or at least shorter: %s',
    async (_, { rig, trip, traps }) => {
      const live = traps.filter(({ counts }) => counts);
      if (live.length === 0) return;
      const analysis = await answers(rig, trip, live);
      const wrong = live.flatMap((trap, index) => {
        const passing = passingOf(analysis, trap, index);
        const found = passing === undefined ? null : foundOf(trap, passing);
        return JSON.stringify(found) === JSON.stringify(expectationOf(trap))
          ? []
          : [`${inShort(trap)}: ${JSON.stringify(found)}`];
      });
      expect(wrong).toEqual([]);
      for (const commodity of COMMODITIES) {
        const any = live.some((trap) => trap.commodity === commodity);
        expect(isCalm(analysis, commodity)).toBe(any);
      }
      // What weakens or advises stands in the text as well.
      const text = await straight.run({}, TRIPS[trip].trip, { more: ['--supply', straight.path('map.osm')] });
      const known = analysis.passings.filter((passing) => passing.counts).flatMap(({ reasons }) => reasons);
      expect(known.filter((reason) => !text.includes(reason.text))).toEqual([]);
    },
  );
});
