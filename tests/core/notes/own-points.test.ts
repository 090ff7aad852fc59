import { describe, expect, it } from 'vitest';
import type { OwnPoint } from '../../../server/contract/notes.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { checkTrip } from '../../../server/core/trip/check-trip.ts';
import { misfitWords } from '../../../server/words/words-of.ts';
import { analysisOf, DIESEL, equatorLon, inputOf, pointFeature } from '../../helpers/analyse-input.ts';

/** Beside the equator at a km of the route, so far to the north. */
const at = (km: number, offKm = 0): string => `${(offKm * 1000) / 110_574.276}, ${equatorLon(km)}`;
const FARM: OwnPoint = { id: 'farm', name: 'Low farm', at: at(600, 1), fuels: ['diesel'], on: '2026-04-20' };
const noting = (ownPoints: OwnPoint[], trip: Partial<TripFile> = {}) =>
  analysisOf({ trip: { ...inputOf().trip, ...trip, ownPoints } });
const ownIn = (analysis: ReturnType<typeof noting>) =>
  analysis.passings.filter(({ id }) => id.startsWith('own/noted/'));

describe('points of the user’s own', () => {
  it('are passed like points of the map, with who said it', () => {
    const noted = noting([
      { ...FARM, by: 'Ann', phone: '555 123', words: 'behind the shed', litres: { fuel: 60 } },
    ]);
    expect(ownIn(noted)).toMatchObject([
      {
        id: 'own/noted/farm',
        name: 'Low farm',
        kind: 'point of your own',
        commodity: 'fuel',
        atKm: expect.closeTo(600, 2),
        offRouteKm: expect.closeTo(1, 3),
        detourKm: expect.closeTo(1.3, 3),
        evidence: 'stated',
        counts: true,
        mostL: 60,
        seenOn: '2026-04-20',
      },
    ]);
    expect(ownIn(noted)[0]!.reasons.map(({ text }) => text)).toEqual([
      'Your own point, noted on 2026-04-20 (Ann, telephone 555 123: "behind the shed")',
    ]);
    expect(noted.fuel.gaps.map(({ to }) => to.id)).toEqual(['own/noted/farm', null]);
  });

  it('lie within the corridor or are not passed', () => {
    expect(ownIn(noting([{ ...FARM, at: at(600, 5.1) }]))).toEqual([]);
    expect(ownIn(noting([{ ...FARM, at: at(600, 4.9) }]))).toHaveLength(1);
  });

  it('give what is told: other fuels not, water by its grade', () => {
    expect(ownIn(noting([{ ...FARM, fuels: ['petrol', 'lpg'] }]))).toMatchObject([
      {
        counts: false,
        reasons: expect.arrayContaining([expect.objectContaining({ code: 'fuel-not-sold' })]),
      },
    ]);
    const water = (grade: NonNullable<OwnPoint['grade']>) => {
      const [own] = ownIn(noting([{ id: 'seep', at: at(600), grade, on: '2026-04-20' }]));
      return [own?.commodity, own?.waterClass, own?.counts];
    };
    expect(water('drinking')).toEqual(['water', 'drinking', true]);
    expect(water('treatable')).toEqual(['water', 'treatable', false]);
    expect(water('washing')).toEqual(['water', 'washing', false]);
    const both = ownIn(noting([{ ...FARM, grade: 'drinking' }]));
    expect(both.map(({ commodity, counts }) => [commodity, counts])).toEqual([
      ['fuel', true],
      ['water', true],
    ]);
  });

  it('count only on the days on which they are there for sure', () => {
    // At 245 km a day the slow pace is there two days after the start on 4 May, the fast one a day earlier.
    const counts = (point: Partial<OwnPoint>, trip: Partial<TripFile> = {}) => {
      const [own] = ownIn(noting([{ ...FARM, ...point }], trip));
      return [own?.counts, own?.reasons.map(({ code }) => code).join(' ')];
    };
    expect(counts({ from: '2026-05-04', until: '2026-05-20' })).toEqual([true, 'own-point']);
    expect(counts({ from: '2026-05-20' })).toEqual([false, 'not-there-yet own-point']);
    expect(counts({ until: '2026-05-04' })).toEqual([false, 'no-longer-there own-point']);
    const { departure: _none, ...undated } = inputOf().trip;
    const [own] = ownIn(analysisOf({ trip: { ...undated, ownPoints: [{ ...FARM, from: '2026-05-04' }] } }));
    expect(own).toMatchObject({ counts: false });
  });

  it('that are in the corridor change no other point', () => {
    const features = [pointFeature('node/1', 600, DIESEL)];
    const plain = analysisOf({ features });
    const noted = analysisOf({ features, trip: { ...inputOf().trip, ownPoints: [FARM] } });
    expect(noted.passings.filter(({ id }) => id === 'node/1')).toEqual(plain.passings);
  });
});

describe('a trip with notes', () => {
  const misfit = (trip: Partial<TripFile>) => {
    const found = checkTrip({ ...inputOf().trip, ...trip }, null);
    return found === null ? null : [found.path, found.misfit];
  };

  it('is refused where one is of no use, with the place of it', () => {
    expect(misfit({ ownPoints: [FARM] })).toBeNull();
    expect(misfit({ ownPoints: [{ ...FARM, at: '33,84' }] })).toEqual([
      '/ownPoints/0/at',
      'place-unreadable',
    ]);
    expect(misfit({ ownPoints: [FARM, FARM] })).toEqual(['/ownPoints/1', 'own-point-twice']);
    const { fuels: _none, ...nothing } = FARM;
    expect(misfit({ ownPoints: [nothing] })).toEqual(['/ownPoints/0', 'own-point-gives-nothing']);
    expect(misfit({ ownPoints: [{ ...FARM, on: '2026-02-30' }] })).toEqual([
      '/ownPoints/0/on',
      'date-impossible',
    ]);
    expect(misfit({ ownPoints: [{ ...FARM, from: '2026-05-02', until: '2026-05-01' }] })).toEqual([
      '/ownPoints/0',
      'days-backward',
    ]);
    expect(misfit({ corrections: [{ id: 'node/1', on: '2026-05-01' }] })).toEqual([
      '/corrections/0',
      'correction-empty',
    ]);
    expect(misfit({ closed: [{ fromKm: 5, toKm: 5, on: '2026-05-01' }] })).toEqual([
      '/closed/0',
      'stretch-backward',
    ]);
    expect(misfit({ plan: { passBy: ['node/1'], mustStop: ['node/2', 'node/1'] } })).toEqual([
      '/plan/mustStop/1',
      'stop-passed-by',
    ]);
    const until = { id: 'node/1', on: '2026-05-01', works: true, until: '2026-13-01' };
    expect(misfit({ confirmations: [until] })).toEqual(['/confirmations/0/until', 'date-impossible']);
  });

  it('says of co-ordinates what came, what is expected and what to do', () => {
    const found = checkTrip({ ...inputOf().trip, ownPoints: [{ ...FARM, at: '33,84' }] }, null);
    expect(found === null ? null : misfitWords(found)).toEqual({
      came: '"33,84": a comma may stand for a decimal point or between the two',
      expected: `latitude and longitude like -33.8683, 84.2067 or 33°52.1'S 84°12.4'E`,
      remedy: 'Write them in one of these forms, with a point before decimals',
    });
  });
});

describe('a closed stretch', () => {
  const closedOf = (closed: NonNullable<TripFile['closed']>, trip: Partial<TripFile> = {}) =>
    analysisOf({ trip: { ...inputOf().trip, ...trip, closed } });

  it('is told before all else, and as a caution at its place', () => {
    const analysis = closedOf([{ fromKm: 500, toKm: 520, on: '2026-04-20', by: 'the council' }]);
    expect(analysis.answer.todo[0]).toEqual([
      'Find another way or another time: you noted the route as ',
      { strong: 'closed' },
      ' from ',
      { quantity: 500, unit: 'km', as: 'at' },
      ' to ',
      { quantity: 520, unit: 'km', as: 'at' },
      '.',
    ]);
    expect(analysis.cautions.find(({ code }) => code === 'route-closed')).toMatchObject({
      text: 'Closed (you noted it on 2026-04-20 (the council)): the route cannot be driven here as it is. Find another way, or another time.',
      fromKm: 500,
      toKm: 520,
    });
  });

  it('is not one that is open again before one comes, nor one that closes after', () => {
    const codes = (days: { from?: string; until?: string }, trip: Partial<TripFile> = {}) =>
      closedOf([{ fromKm: 500, toKm: 520, on: '2026-04-20', ...days }], trip)
        .cautions.map(({ code }) => code)
        .filter((code) => code.includes('closed'));
    expect(codes({ until: '2026-05-03' })).toEqual([]);
    expect(codes({ until: '2026-05-30' })).toEqual(['route-closed']);
    expect(codes({ from: '2026-05-30' })).toEqual([]);
    expect(codes({ from: '2026-05-04' })).toEqual(['route-closed']);
  });

  it('leaves what leads across it unknown at best, and says why', () => {
    const features = [
      pointFeature('node/1', 300, DIESEL),
      pointFeature('node/2', 600, DIESEL),
      pointFeature('node/3', 900, DIESEL),
    ];
    const verdicts = (days: { until?: string }) => {
      const closed = [{ fromKm: 500, toKm: 520, on: '2026-04-20', ...days }];
      return analysisOf({ features, trip: { ...inputOf().trip, closed } }).fuel.gaps.map(
        (gap) => gap.verdict,
      );
    };
    const open = verdicts({ until: '2026-05-03' });
    expect(open.slice(0, 3)).toEqual(['enough', 'enough', 'enough']);
    expect(verdicts({})).toEqual(open.map((verdict, index) => (index === 1 ? 'unknown' : verdict)));
    const { answer } = analysisOf({
      features,
      trip: { ...inputOf().trip, closed: [{ fromKm: 500, toKm: 520, on: '2026-04-20' }] },
    });
    expect(JSON.stringify(answer)).toContain('you noted the route as closed');
  });

  it('past the end of the route is told to be so', () => {
    const analysis = closedOf([{ fromKm: 1400, toKm: 1420, on: '2026-04-20' }]);
    expect(analysis.cautions.map(({ code }) => code)).toContain('closed-off-route');
  });
});
