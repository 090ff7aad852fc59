import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { realFolderThere, realPath } from '../helpers/real.ts';

/** A command line whose answer is held: the words after `drystage`. */
export interface GoldenCase {
  name: string;
  words: string[];
  /** Files that the words name as `@name`, written before the command runs. */
  files?: Record<string, string>;
}

type Plain = Record<string, unknown>;

const demoPath = (name: string): string =>
  fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));
const demoFile = (name: string): Plain => parse(readFileSync(demoPath(name), 'utf8')) as Plain;

const demo = { route: demoPath('route.gpx'), extract: demoPath('orrimar.osm.pbf') };
const rig = demoFile('rig.yaml');
const trip = demoFile('trip.yaml');
const simpleRig = demoFile('rig-simple.yaml');
const json = (value: unknown): string => JSON.stringify(value);

/** Both answers of one command, and both forms. */
function both(name: string, words: string[], files: Record<string, string>): GoldenCase[] {
  return ['gaps', 'plan'].flatMap((command) => [
    { name: `${command} ${name}`, words: [command, ...words], files },
    { name: `${command} ${name} json`, words: [command, ...words, '--json'], files },
  ]);
}

const demoWith = (name: string, changes: { rig?: Plain; trip?: Plain; extract?: string }): GoldenCase[] =>
  both(name, [demo.route, '--supply', changes.extract ?? demo.extract, '--rig', '@rig', '--trip', '@trip'], {
    rig: json({ ...rig, ...changes.rig }),
    trip: json({ ...trip, ...changes.trip }),
  });

const without = (whole: Plain, ...keys: string[]): Plain =>
  Object.fromEntries(Object.entries(whole).filter(([key]) => !keys.includes(key)));

const litres = (fuel: number, reserve: Plain): Plain => ({
  kind: 'diesel',
  litresPer100Km: fuel,
  tanks: [{ name: 'main', litres: 90 }],
  cans: { litres: 20, owned: 3 },
  reserve,
});

const DEMO_CASES: GoldenCase[] = [
  ...demoWith('full', {}),
  ...both('simple', [demo.route, '--supply', demo.extract, '--rig', '@rig', '--trip', '@trip'], {
    rig: json(simpleRig),
    trip: json(demoFile('trip-simple.yaml')),
  }),
  ...both('rig alone', [demo.route, '--supply', demo.extract, '--rig', '@rig'], {
    rig: json({ ...simpleRig, pace: { hoursPerDay: 6, kmPerHour: 40 } }),
  }),
  ...both('by the hour', [demo.route, '--supply', demo.extract, '--rig', '@rig', '--trip', '@trip'], {
    rig: json(rig),
    trip: json({
      ...without(trip, 'campDays'),
      departureHour: 7.5,
      campAfterHours: 5,
      oneWay: [{ fromKm: 500, toKm: 620 }],
      stays: [
        { atKm: 300, days: 0.5 },
        { atKm: 2000, days: 1 },
      ],
      coldestNightC: -12,
    }),
  }),
  ...demoWith('low at the start', { trip: { aboard: { fuelLitres: 40, waterLitres: 12 } } }),
  ...demoWith('old map', {
    trip: { departure: '2031-08-01', counting: { fuel: 'stated', water: 'implied' } },
  }),
  ...demoWith('petrol and fraction', {
    rig: {
      fuel: { ...litres(19, { fraction: 0.2 }), kind: 'petrol' },
      treatment: undefined,
      water: {
        litresPerDay: 15,
        tanks: [{ name: 'under floor', litres: 60 }],
        cans: { litres: 10, owned: 2 },
        reserve: { litres: 12 },
      },
      crew: undefined,
    },
    trip: { onward: undefined, aboard: {} },
  }),
  ...demoWith('dog, heat, washing at source', {
    rig: {
      crew: {
        people: [{ level: 'careful' }, { level: 'basic' }],
        pets: [{ kind: 'dog', kg: 25 }],
        heat: { temperatureC: 43, humidityPercent: 35, sun: 'full', workHoursPerDay: 4, work: 'hard' },
      },
      water: {
        tanks: [{ name: 'under floor', litres: 120 }],
        cans: { litres: 20, owned: 2 },
        reserve: { days: 3 },
      },
      treatment: undefined,
    },
  }),
  ...demoWith('one can, noted', {
    rig: { fuel: { ...(rig.fuel as Plain), cans: { litres: 20, owned: 1 } } },
    trip: {
      plan: { mostCans: { fuel: 1, water: 2 } },
      confirmations: [{ id: 'node/900000001', on: '2027-04-30', works: true }],
    },
  }),
  {
    name: 'compare',
    words: [
      'compare',
      demo.route,
      '--supply',
      demo.extract,
      '--rig',
      demoPath('rig.yaml'),
      '--rig',
      '@rig',
      '--trip',
      demoPath('trip.yaml'),
      '--json',
    ],
    files: { rig: json({ ...simpleRig, name: 'Lighter' }) },
  },
  {
    name: 'compare text',
    words: [
      'compare',
      demo.route,
      '--supply',
      demo.extract,
      '--rig',
      demoPath('rig.yaml'),
      '--rig',
      '@rig',
      '--trip',
      demoPath('trip.yaml'),
    ],
    files: { rig: json({ ...simpleRig, name: 'Lighter' }) },
  },
  ...['', '--json'].map((form) => ({
    name: `learn${form === '' ? '' : ' json'}`,
    words: ['learn', '@log', ...(form === '' ? [] : [form])],
    files: {
      log: [
        'odometer_km,litres,full,surface,note',
        ...[0, 410, 795, 1260, 1611, 2010, 2390, 2905].map(
          (at, index) =>
            `${10_000 + at},${55 + ((index * 7) % 11)},${index === 3 ? 'part' : 'full'},${index % 2 === 0 ? 'gravel' : 'sand'},`,
        ),
      ].join('\n'),
    },
  })),
  {
    name: 'learn water json',
    words: ['learn', '@log', '--people', '3', '--json'],
    files: {
      log: [
        'date,litres,people,days',
        ...[1, 4, 6, 9, 12, 15].map(
          (day, index) => `2026-05-${String(day).padStart(2, '0')},${20 + index * 3},2,${2 + (index % 2)}`,
        ),
      ].join('\n'),
    },
  },
  ...refusals(),
];

/** Inputs that cannot be used: one line on stderr, which is held as well. */
function refusals(): GoldenCase[] {
  const bad: [string, Record<string, unknown>, Record<string, unknown>][] = [
    ['no tanks', { ...simpleRig, fuel: { kind: 'diesel', litresPer100Km: 12 } }, {}],
    ['unknown key', { ...simpleRig, fule: 1 }, {}],
    [
      'rest above the tank',
      {
        ...simpleRig,
        fuel: { ...(simpleRig.fuel as Plain), tanks: [{ name: 'main', litres: 10, unusableLitres: 20 }] },
      },
      {},
    ],
    [
      'range turned round',
      {
        ...simpleRig,
        fuel: { ...(simpleRig.fuel as Plain), litresPer100Km: { low: 20, typical: 15, high: 17 } },
      },
      {},
    ],
    [
      'front axle alone',
      { ...rig, vehicle: { ...(rig.vehicle as Plain), axleKg: { front: 5000, rear: 10 } } },
      {},
    ],
    ['axle beyond', { ...rig, vehicle: { ...(rig.vehicle as Plain), wheelbaseM: 0.2 } }, {}],
    ['two ways aboard', simpleRig, { aboard: { fuelLitres: 3, fuelKmSinceFill: 4 } }],
    [
      'surfaces overlap',
      simpleRig,
      {
        surfaces: [
          { fromKm: 0, toKm: 50, surface: 'sand' },
          { fromKm: 40, toKm: 60, surface: 'sand' },
        ],
      },
    ],
    ['backward stretch', simpleRig, { oneWay: [{ fromKm: 60, toKm: 50 }] }],
    ['no such part', simpleRig, { part: 'no such track' }],
  ];
  return bad.map(([name, badRig, badTrip]) => ({
    name: `refused ${name}`,
    words: ['gaps', demo.route, '--supply', demo.extract, '--rig', '@rig', '--trip', '@trip'],
    files: { rig: json(badRig), trip: json(badTrip) },
  }));
}

function realCases(): GoldenCase[] {
  if (!realFolderThere) return [];
  const files = {
    rig: json(rig),
    simple: json(simpleRig),
    trip: json({ onward: { km: 0 }, departure: '2026-07-01' }),
  };
  const swissFuel = realPath('extracts/switzerland-fuel-2026.overpass.json');
  const swiss = ['swiss-grand-tour', swissFuel] as const;
  const cases: [string, string, string, string][] = [
    ['real swiss simple', realPath('routes/swiss-grand-tour.gpx'), swiss[1], '@simple'],
    ['real swiss full', realPath('routes/swiss-grand-tour.gpx'), swiss[1], '@rig'],
    [
      'real canyon',
      realPath('routes/grand-canyon.gpx'),
      realPath('extracts/liechtenstein-2015.osm.pbf'),
      '@rig',
    ],
    [
      'real swiss waypoints',
      realPath('routes/swiss-grand-tour.gpx'),
      realPath('extracts/switzerland-fuel-2026.waypoints.gpx'),
      '@simple',
    ],
    [
      'real swiss and liechtenstein',
      realPath('routes/swiss-grand-tour.gpx'),
      realPath('extracts/liechtenstein-2013.osm.bz2'),
      '@rig',
    ],
    [
      'real norway water',
      realPath('routes/swiss-grand-tour.gpx'),
      realPath('extracts/norway-south-drinking-water-2024.geojson'),
      '@simple',
    ],
  ];
  return [
    ...cases.flatMap(([name, route, extract, which]) =>
      ['', '--json'].map((form) => ({
        name: `gaps ${name}${form === '' ? '' : ' json'}`,
        words: [
          'gaps',
          route,
          '--supply',
          extract,
          '--rig',
          which,
          '--trip',
          '@trip',
          ...(form === '' ? [] : [form]),
        ],
        files,
      })),
    ),
    {
      name: 'plan real canyon json',
      words: [
        'plan',
        realPath('routes/grand-canyon.gpx'),
        '--supply',
        realPath('extracts/monaco-2023.osm.pbf'),
        '--rig',
        '@simple',
        '--trip',
        '@trip',
        '--json',
      ],
      files,
    },
  ];
}

export const goldenCases = (): GoldenCase[] => [...DEMO_CASES, ...realCases()];
