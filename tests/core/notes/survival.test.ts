import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ObjectThen } from '../../../server/contract/common.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { bearingTags, changedTags } from '../../../server/core/supply/tags/bearing.ts';
import { analysisOf, DIESEL, equatorLon, inputOf, pointFeature } from '../../helpers/analyse-input.ts';

const WAS: ObjectThen = { lon: equatorLon(600), lat: 0, tags: DIESEL };
/** Cautions on a confirmation of node/1, noted of a station at km 600, with another extract. */
function cautionsOn(features: MappedFeature[], was: ObjectThen | null = WAS) {
  const confirmation = { id: 'node/1', on: '2026-04-20', works: true, ...(was === null ? {} : { was }) };
  const { cautions } = analysisOf({ features, trip: { ...inputOf().trip, confirmations: [confirmation] } });
  return cautions.filter(({ code }) => code.startsWith('note-')).map(({ code, text }) => [code, text]);
}
const station = (km: number, tags: Record<string, string> = {}, id = 'node/1') =>
  pointFeature(id, km, { ...DIESEL, ...tags });

describe('a note on an object of the map', () => {
  it('says nothing while the object is what it was', () => {
    expect(cautionsOn([station(600)])).toEqual([]);
    expect(cautionsOn([station(600.019)])).toEqual([]);
    expect(cautionsOn([station(610)], null)).toEqual([]);
  });

  it('tells how far it has moved', () => {
    expect(cautionsOn([station(600.15, { name: 'Low pump' })])).toEqual([
      [
        'note-object-moved',
        'Low pump stands 150 m from where it was when you noted something of it on 2026-04-20: see that it is the same.',
      ],
    ]);
  });

  it('tells which of the tags that bear on a supply have changed, and of no other', () => {
    expect(cautionsOn([station(600, { name: 'New name', colour: 'red' })])).toEqual([]);
    const changed = { amenity: 'fuel', 'fuel:diesel': 'no', access: 'private' };
    expect(cautionsOn([pointFeature('node/1', 600, changed)])).toEqual([
      [
        'note-object-changed',
        'node/1 was changed on the map since you noted something of it on 2026-04-20: access=private is new, fuel:diesel=yes is now no. See that your note still holds.',
      ],
    ]);
    expect(cautionsOn([pointFeature('node/1', 600, { amenity: 'fuel' })])).toEqual([
      ['note-object-changed', expect.stringContaining('fuel:diesel=yes is gone')],
    ]);
  });

  it('tells that it is gone, and what stands within 200 m of its place', () => {
    expect(cautionsOn([])).toEqual([
      [
        'note-object-gone',
        'What you noted of node/1 on 2026-04-20 finds no such supply on the map any more: look up what became of it, and note it anew.',
      ],
    ]);
    expect(cautionsOn([station(600.15, { name: 'New pump' }, 'node/2')])).toEqual([
      ['note-object-gone', expect.stringContaining('any more; New pump (node/2) is 150 m from its place:')],
    ]);
    expect(cautionsOn([station(600.21, {}, 'node/2')])).toEqual([
      ['note-object-gone', expect.not.stringContaining('node/2')],
    ]);
    const [far, near] = [station(600.15, {}, 'node/2'), station(600.1, {}, 'node/3')];
    expect(cautionsOn([far, near])).toEqual([
      ['note-object-gone', expect.stringContaining('node/3 is 100 m from its place')],
    ]);
    const tap = pointFeature('node/2', 600.1, { amenity: 'drinking_water' });
    expect(cautionsOn([tap])).toEqual([['note-object-gone', expect.not.stringContaining('node/2')]]);
    expect(cautionsOn([], null)).toEqual([['note-object-gone', expect.any(String)]]);
  });

  it('is not asked about where the route does not come by', () => {
    expect(cautionsOn([], { ...WAS, lat: 1 })).toEqual([]);
  });

  it('tells of a new supply beside it, where it is known which stood there then', () => {
    const beside = [station(600), station(600.05, {}, 'node/2')];
    expect(cautionsOn(beside)).toEqual([]);
    expect(cautionsOn(beside, { ...WAS, near: ['node/2'] })).toEqual([]);
    expect(cautionsOn(beside, { ...WAS, near: [] })).toEqual([
      [
        'note-new-nearby',
        'Since you noted something of node/1 on 2026-04-20 a new supply has come: node/2 is 50 m from it. It may be the same.',
      ],
    ]);
  });

  it('keeps the tags of the map, whatever is corrected: noted twice, nothing has changed', () => {
    const correction = { id: 'node/1', on: '2026-04-20', fuels: ['petrol' as const], openingHours: '24/7' };
    const trip = { ...inputOf().trip, corrections: [correction] };
    const [passing] = analysisOf({ features: [station(600)], trip }).passings;
    expect(passing!.tags).toEqual(DIESEL);
    const { lon, lat, tags } = passing!;
    const again = {
      ...trip,
      confirmations: [{ id: 'node/1', on: '2026-04-21', works: true, was: { lon, lat, tags } }],
    };
    const { cautions } = analysisOf({ features: [station(600)], trip: again });
    expect(cautions.filter(({ code }) => code.startsWith('note-'))).toEqual([]);
  });

  it('goes on counting by its id wherever the object stands', () => {
    const { passings } = analysisOf({
      features: [station(605)],
      trip: {
        ...inputOf().trip,
        confirmations: [{ id: 'node/1', on: '2026-04-20', works: true, was: WAS }],
      },
    });
    expect(passings).toMatchObject([{ id: 'node/1', evidence: 'confirmed' }]);
  });
});

describe('tags that bear on a supply', () => {
  const someTags = fc.dictionary(
    fc.constantFrom(
      'amenity',
      'fuel:diesel',
      'name',
      'access',
      'colour',
      'disused:amenity',
      'drinking_water',
    ),
    fc.constantFrom('yes', 'no', 'fuel'),
  );

  it('do not change by themselves, and change back as they changed', () => {
    fc.assert(
      fc.property(someTags, someTags, (before, now) => {
        expect(changedTags(before, bearingTags(before))).toEqual([]);
        const back = changedTags(now, before).map(({ key, before: a, now: b }) => ({
          key,
          before: b,
          now: a,
        }));
        expect(back).toEqual(changedTags(before, now));
      }),
    );
  });
});
