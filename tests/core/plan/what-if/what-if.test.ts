import type { Point } from 'geojson';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { Gauge, WhatIf, type WhatIfKind } from '../../../../server/contract/whatif.ts';
import { type AnalyseInput, type Reckoned, reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import type { Report } from '../../../../server/core/gaps/gap.ts';
import type { MappedFeature } from '../../../../server/core/input/sources.ts';
import { evenLoad } from '../../../../server/core/mass/load.ts';
import { basisOf } from '../../../../server/core/plan/drive/basis.ts';
import { turnBacksOf } from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { DIESEL, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { FULL_RIG, FULL_TRIP } from '../../../helpers/full-plan.ts';
import { gaugeOf, whatIf } from '../by-hand/contracted.ts';

function reckoned(changes: Partial<AnalyseInput> & { features?: MappedFeature[] } = {}): Reckoned {
  const outcome = reckonTrip(inputOf(changes));
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

const features = [
  pointFeature('node/1', 400, {
    ...DIESEL,
    'contact:phone': '+672 1 234',
    opening_hours: 'Mo-Fr 08:00-17:00',
  }),
  pointFeature('node/2', 900, {
    ...DIESEL,
    name: 'Far fuel',
    phone: '+672 5 678',
    website: 'https://far.example',
  }),
  pointFeature('node/3', 600, TAP),
];
const of = (from: Reckoned, ask = {}) => whatIf(from, basisOf(from, null), ask);
const leastMargin = ({ gaps }: Report) =>
  Math.min(...gaps.map(({ marginL, grades }) => Math.min(marginL, grades?.drinking.marginL ?? marginL)));

describe('a closed stretch', () => {
  const closed = [{ fromKm: 550, toKm: 560, on: '2026-04-20' }];
  const from = reckoned({ features, trip: { ...inputOf().trip, closed } });

  it('leaves gaps and what-ifs across it unknown at best, in one and the same way', () => {
    const open = reckoned({ features });
    expect(open.analysis.fuel.gaps.map(({ verdict }) => verdict)).toEqual(['enough', 'enough', 'enough']);
    expect(from.analysis.fuel.gaps.map(({ verdict }) => verdict)).toEqual(['enough', 'unknown', 'enough']);
    const across = of(from).rows.filter(
      (row) => row.commodity === 'fuel' && row.next === 'on' && row.from.atKm < 550 && row.to.atKm > 560,
    );
    expect(across.length).toBeGreaterThan(0);
    expect(across.map(({ verdict }) => verdict)).not.toContain('enough');
    expect(across.map(({ verdict }) => verdict)).not.toContain('into-reserve');
  });

  it('stays one where the rig or the trip is changed', () => {
    const { rig, trip } = from.analysis;
    for (const commodity of COMMODITIES)
      expect(from.coursesWith(rig, trip, evenLoad(50))[commodity].closed).toEqual([
        { fromM: 550_000, toM: 560_000 },
      ]);
  });
});

describe('courses for another rig or trip', () => {
  it.each([
    ['a plain rig', EXAMPLE_RIG, inputOf().trip],
    ['a rig and trip that tell everything', FULL_RIG, { ...FULL_TRIP, part: 'all' as const }],
  ])('are those of the analysis where nothing is changed: %s', (_what, rig, trip) => {
    const from = reckoned({ rig, trip, features });
    const { analysis } = from;
    const again = from.coursesWith(analysis.rig, analysis.trip, evenLoad(0));
    for (const commodity of COMMODITIES) {
      const { explain, ...course } = again[commodity];
      const { explain: before, ...expected } = from.sides[commodity].course;
      expect(course).toEqual(expected);
      expect(explain(0, 500_000)).toEqual(before(0, 500_000));
    }
    const heavier = from.coursesWith(analysis.rig, analysis.trip, evenLoad(150)).fuel;
    expect(heavier.litres).toEqual(from.fuelWithLoad(150).litres);
  });
});

describe('what if, without a plan', () => {
  it('says that it goes by the gaps, fits the contract, and has every kind of row that the rig allows', () => {
    const from = reckoned({ features });
    const made = of(from);
    expect(made.basis).toBe('gaps');
    expect(Compile(WhatIf).Errors(made)).toEqual([]);
    expect(Compile(Gauge).Errors(gaugeOf(basisOf(from, null), turnBacksOf(basisOf(from, null))))).toEqual([]);
    const kinds = new Set(made.rows.map(({ kind }) => kind));
    const expected: WhatIfKind[] = [
      'stop-fails',
      'container-lost',
      'pump-fails',
      'wait',
      'low-use',
      'typical-use',
      'high-use',
      'turn-round',
    ];
    expect([...kinds].sort()).toEqual([...expected].sort());
    expect(made.cautions.map(({ code }) => code)).toEqual(['heat-not-told', 'standing-fuel-not-told']);
    const far = of(from, { turnRoundAtM: 5_000_000 });
    expect(far.cautions.map(({ code }) => code)).toContain('turn-round-off-route');
  });

  it('says that nothing is known past the end where the trip does not tell of it', () => {
    const { onward: _onward, ...trip } = inputOf().trip;
    const codes = (from: Reckoned) => of(from).cautions.map(({ code }) => code);
    expect(codes(reckoned({ features, trip }))).toContain('past-end-not-told');
    expect(codes(reckoned({ features }))).not.toContain('past-end-not-told');
  });

  it('has the margins of the analysis at the high rate, and of one with another rate at the others', () => {
    const from = reckoned({ features });
    const made = of(from);
    const rowOf = (kind: WhatIfKind, commodity: 'fuel' | 'water') =>
      made.rows.find((row) => row.kind === kind && row.commodity === commodity)!;
    const rates = {
      'low-use': { fuel: 14, water: 11 },
      'typical-use': { fuel: 15.5, water: 14 },
      'high-use': { fuel: 17, water: 18 },
    } as const;
    for (const [kind, { fuel, water }] of Object.entries(rates)) {
      const flat = (value: number) => ({ low: value, typical: value, high: value });
      const rig: RigFile = {
        ...EXAMPLE_RIG,
        fuel: { ...EXAMPLE_RIG.fuel, litresPer100Km: flat(fuel) },
        water: { ...EXAMPLE_RIG.water, litresPerDay: flat(water) },
      };
      const { analysis } = reckoned({ rig, features });
      for (const commodity of COMMODITIES) {
        expect(rowOf(kind as WhatIfKind, commodity).marginL).toBeCloseTo(leastMargin(analysis[commodity]), 9);
      }
    }
  });
});

describe('which assumption matters most', () => {
  const crewRig: RigFile = {
    ...EXAMPLE_RIG,
    water: { tanks: [{ name: 'under floor', litres: 200 }], reserve: { days: 2 } },
    crew: {
      people: [{ count: 3, level: 'careful' }],
      heat: { temperatureC: 30, humidityPercent: 20, sun: 'some', work: 'easy', workHoursPerDay: 2 },
    },
  };
  const trip: TripFile = {
    ...inputOf().trip,
    surfaces: [{ fromKm: 100, toKm: 500, surface: 'track' }],
    allowancePercent: 5,
  };

  it('has the margins of an analysis with that one step, the greatest harm for its tanks first', () => {
    const from = reckoned({ rig: crewRig, trip, features });
    const { matters } = of(from, { hotterByC: 6 });
    const use = from.analysis.waterUse.litresPerDay;
    const steps: Record<string, { rig?: RigFile; trip?: TripFile }> = {
      use: {
        rig: {
          ...crewRig,
          fuel: { ...crewRig.fuel, litresPer100Km: { low: 15.4, typical: 17.05, high: 18.7 } },
          water: {
            ...crewRig.water,
            litresPerDay: { low: use.low * 1.1, typical: use.typical * 1.1, high: use.high * 1.1 },
          },
        },
      },
      pace: {
        rig: { ...crewRig, pace: { hoursPerDay: 7, kmPerHour: { slow: 31.5, typical: 40.5, fast: 54 } } },
      },
      allowance: {
        trip: {
          ...trip,
          allowancePercent: 10,
          surfaces: [{ fromKm: 100, toKm: 500, surface: 'track', allowancePercent: 15 }],
        },
      },
      heat: {
        rig: { ...crewRig, crew: { ...crewRig.crew!, heat: { ...crewRig.crew!.heat!, temperatureC: 36 } } },
      },
    };
    expect(matters).toHaveLength(8);
    for (const { assumption, commodity, beforeL, afterL, changeL } of matters) {
      const { analysis } = reckoned({ rig: crewRig, trip, features, ...steps[assumption] });
      expect(beforeL).toBeCloseTo(leastMargin(from.analysis[commodity]), 9);
      expect(afterL, `${assumption} ${commodity}`).toBeCloseTo(leastMargin(analysis[commodity]), 6);
      expect(changeL).toBeCloseTo(afterL - beforeL, 9);
    }
    const shares = matters.map(({ ofTanks }) => ofTanks);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBeLessThan(0);
  });

  it('raises an observed figure as the sum of the parts rises, where heat is told', () => {
    const rig: RigFile = {
      ...crewRig,
      water: { ...crewRig.water, litresPerDay: { low: 10, typical: 12, high: 14 } },
    };
    const summed = (more: number) => {
      const crew = { ...crewRig.crew!, heat: { ...crewRig.crew!.heat!, temperatureC: 30 + more } };
      return reckoned({ rig: { ...crewRig, crew }, features }).analysis.waterUse.litresPerDay.high;
    };
    const { rows } = of(reckoned({ rig, features }), { hotterByC: 6 });
    const row = rows.find(({ kind }) => kind === 'hotter')!;
    expect(summed(6)).toBeGreaterThan(summed(0));
    const rate = Math.round(((14 * summed(6)) / summed(0)) * 10) / 10;
    expect(row.text).toBe(`6 °C hotter than told (${rate} l a day).`);
  });
});

describe('the list to telephone first', () => {
  it('begins with the stop without which most fails, and tells how to reach it', () => {
    const made = of(reckoned({ features }));
    const verdicts = made.callFirst.map(({ id, verdict }) => [id, verdict]);
    // Without node/2 the way from km 400 to the end is 940 km, without node/1 900 km to node/2: 127 l are 747 km.
    // Without the tap 1,340 km are 6 days at 245 km a day: 108 of 70 l, the most for its tanks.
    expect(verdicts).toEqual([
      ['node/3', 'short'],
      ['node/2', 'short'],
      ['node/1', 'short'],
    ]);
    expect(made.callFirst[1]).toMatchObject({
      name: 'Far fuel',
      phone: '+672 5 678',
      website: 'https://far.example',
      openingHours: null,
    });
    expect(made.callFirst[2]).toMatchObject({
      phone: '+672 1 234',
      website: null,
      openingHours: 'Mo-Fr 08:00-17:00',
    });
    expect(made.callFirst[2]!.fails[0]!.coverL).toBeCloseTo(900 * 0.17 + 17 - 127, 2);
  });
});

describe('the list to check before leaving', () => {
  const tap = features.filter(({ id }) => id === 'node/3');
  const listed = (changes: Parameters<typeof reckoned>[0]) => {
    const made = of(reckoned(changes));
    expect(Compile(WhatIf).Errors(made)).toEqual([]);
    return made.callFirst;
  };

  it('tells of what has no name what it is and where, by the nearest named place', () => {
    expect(listed({ features: tap })[0]).toMatchObject({
      name: null,
      where: 'drinking-water tap, km 600',
      seenOn: null,
      confirmation: null,
      isOwn: false,
    });
    const [lon = 0, lat = 0] = (tap[0]!.geometry as Point).coordinates;
    const ollin = { id: 'node/9', what: 'settlement' as const, name: 'Ollin' };
    const objects = [{ ...ollin, lines: [Float64Array.of(lon, lat - 0.01)] }];
    const supplies = { ...inputOf({ features: tap }).supplies, surroundings: { objects, roads: [] } };
    expect(listed({ supplies })[0]).toMatchObject({
      where: 'drinking-water tap, km 600, 1.1 km N of Ollin',
    });
  });

  it('marks what was confirmed long before the departure, with whom to ask and from what day on', () => {
    const confirmations = [
      { id: 'node/1', on: '2026-01-10', works: true, by: 'Ann', phone: '+672 9', words: 'till six' },
    ];
    const trip = { ...inputOf().trip, departure: '2026-05-01', confirmations };
    const call = listed({ features, trip }).find(({ id }) => id === 'node/1');
    expect(call).toMatchObject({
      evidence: 'confirmed',
      phone: '+672 9',
      confirmation: { on: '2026-01-10', by: 'Ann', words: 'till six', againFrom: '2026-03-02' },
    });
    const { cautions } = reckoned({ features, trip }).analysis;
    expect(cautions).toContainEqual(
      expect.objectContaining({ code: 'confirm-before-leaving', fromM: expect.closeTo(400_000, 3) }),
    );
  });
});

describe('a treatment line that fails', () => {
  it('takes with it the waters that count only thanks to it', () => {
    // A membrane that throws nothing away: the need stays that of the example.
    const stages = FULL_RIG.treatment!.stages.map((stage) =>
      stage.kind === 'reverse-osmosis' ? { ...stage, recovery: 1 } : stage,
    );
    const treatment = { ...FULL_RIG.treatment!, stages, treatEverything: false };
    const rig: RigFile = { ...EXAMPLE_RIG, treatment };
    const spring = pointFeature('node/4', 200, { natural: 'spring' });
    const trip: TripFile = { ...inputOf().trip, counting: { water: 'implied' } };
    const from = reckoned({ rig, trip, features: [...features, spring] });
    const used = from.analysis.passings.filter(
      ({ waterClass, counts }) => waterClass === 'treatable' && counts,
    );
    expect(used.map(({ id }) => id)).toEqual(['node/4']);
    const [underWay, row, ...rest] = of(from).rows.filter(({ kind }) => kind === 'treatment-fails');
    expect(rest).toEqual([]);
    if (underWay === undefined || row === undefined) throw new Error('two rows are expected');
    // Treated at the tap: all 70 l from the spring are unfit. At x km, between the nights of km 245 and 490, it takes on
    // to km 600 a night and (600 − x) / 35 h. Back to km 200 are (x − 200) / 35 h, and a night as well where the hours of
    // the day do not suffice, from km 345 on: alike at km 400.
    expect(underWay.atKm).toBeCloseTo(400, 6);
    expect(underWay.arriveL).toBeCloseTo((-18 * (17 + 200 / 35)) / 24, 6);
    expect(row.atKm).toBeCloseTo(200, 6);
    expect(row.from.kind).toBe('start');
    expect(row.to.id).toBe('node/3');
    // 600 km are two whole days and 110 km: of 70 l 38.4, 36 in reserve.
    expect(row.marginL).toBeCloseTo(70 - 18 * (2 + 110 / 35 / 24) - 36, 9);
    const without = of(reckoned({ rig, features })).rows.find(({ kind }) => kind === 'treatment-fails')!;
    expect(without.atKm).toBeNull();
    expect(without.text).toContain('nothing changes');
  });
});

describe('what has been used since the last fill', () => {
  const trip: TripFile = {
    ...inputOf().trip,
    aboard: { fuelKmSinceFill: 100, waterDaysSinceFill: 0 },
  };

  it('goes by the rate as well', () => {
    const from = reckoned({ trip, features: [] });
    const row = of(from).rows.find(({ kind, commodity }) => kind === 'low-use' && commodity === 'fuel')!;
    // 100 km since the fill and 1,340 km at 14 l/100 km.
    expect(row.arriveL).toBeCloseTo(127 - 14 - 1340 * 0.14, 2);
  });
});
