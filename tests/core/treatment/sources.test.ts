import { describe, expect, it } from 'vitest';
import type { SourceKind, TreatmentFile, WaterNote } from '../../../server/contract/treatment.ts';
import { drawnLPerMin, timeToFill } from '../../../server/core/treatment/line/flow/time-to-fill.ts';
import { judgeSource } from '../../../server/core/treatment/source/judge-source.ts';
import { sourceKindOf } from '../../../server/core/treatment/source/source-kind.ts';
import { noted } from '../../../server/core/treatment/source/water-notes.ts';
import { codesOf, LAMP, lineOf, reportOn, textsOf, ULTRAFILTER, WEEK } from './lines.ts';

const OSMOSIS: TreatmentFile['stages'][number] = { kind: 'reverse-osmosis', poreMicron: 0.001 };
const CARBON: TreatmentFile['stages'][number] = { kind: 'carbon' };
const OSMOSIS_LINE = [CARBON, OSMOSIS];
const PUMP = { pump: { noFlowKPa: 800, ratedKPa: 200, ratedLPerMin: 10 } };
const note = (changes: Partial<WaterNote> = {}): WaterNote => ({
  id: 'node/1',
  on: '2026-05-01',
  saltOk: true,
  ...changes,
});
const PLACE = { altitudeM: 0, flowLPerMin: null };
const verdictOf = (
  stages: TreatmentFile['stages'],
  kind: SourceKind,
  notes: WaterNote[] = [],
  rest: Omit<TreatmentFile, 'stages'> = {},
) => judgeSource(lineOf(stages, rest), kind, PLACE, noted(notes, '2026-05-04'));

describe('what a line makes fit', () => {
  const treatable = (stages: TreatmentFile['stages'], rest: Omit<TreatmentFile, 'stages'> = {}) =>
    reportOn(stages, rest)
      .sources.filter((source) => source.treatable)
      .map((source) => source.kind);

  it('ultrafilter and lamp do all but bores and what nobody knows', () => {
    expect(treatable([ULTRAFILTER, LAMP])).toEqual([
      'piped-tap',
      'village-well',
      'spring',
      'river',
      'rain-tank',
    ]);
  });

  it('a lamp alone does clear water only', () => {
    expect(treatable([LAMP])).toEqual(['piped-tap', 'spring']);
  });

  it('an ultrafilter alone lacks viruses', () => {
    expect(treatable([ULTRAFILTER])).toEqual([]);
    const report = reportOn([ULTRAFILTER]);
    expect(report.lacks).toEqual([
      { germs: 'bacteria', log: 3 },
      { germs: 'viruses', log: 4 },
    ]);
    expect(codesOf(report)).toContain('treatment-below-target');
  });

  it('hazards are the user’s to change', () => {
    const hazards = { river: { turbidityNtu: 0.5 }, spring: { salt: 'yes' as const } };
    expect(treatable([LAMP], { hazards })).toEqual(['piped-tap', 'river']);
  });

  it('water without germs needs no log', () => {
    const hazards = { spring: { microbial: false } };
    expect(treatable([{ kind: 'sediment' }], { hazards })).toEqual(['spring']);
  });

  it('only the stages before the drinking tap count', () => {
    const taps = [{ name: 'drinking', afterStage: 1, use: 'drinking' as const }];
    expect(treatable([ULTRAFILTER, LAMP], { taps })).toEqual([]);
  });

  it('a target of the user’s own is met or not', () => {
    const target = { bacteria: 3, viruses: 0, protozoa: 3 };
    expect(reportOn([ULTRAFILTER], { target }).meetsTarget).toBe(true);
    expect(reportOn([ULTRAFILTER], { target: { ...target, bacteria: 3.01 } }).meetsTarget).toBe(false);
  });
});

describe('salt and chemicals', () => {
  const LINE = [ULTRAFILTER, LAMP];

  it('a bore needs a dated note that it is not salty', () => {
    expect(verdictOf(LINE, 'bore')).toMatchObject({ ok: false });
    expect(textsOf(verdictOf(LINE, 'bore').lacks).join()).toContain('note the date');
    expect(verdictOf(LINE, 'bore', [note()]).ok).toBe(true);
    expect(verdictOf([...LINE, OSMOSIS], 'bore').ok).toBe(false);
  });

  it('what is salty takes reverse osmosis', () => {
    const salty = [note({ saltOk: false, tdsMgPerLitre: 3000 })];
    expect(textsOf(verdictOf(LINE, 'spring', salty).lacks)).toEqual([
      'salt, which only reverse osmosis takes out',
    ]);
    expect(verdictOf([...LINE, ...OSMOSIS_LINE], 'spring', salty, PUMP).ok).toBe(true);
    const frozen = [CARBON, { ...OSMOSIS, mayHaveFrozen: true }];
    expect(verdictOf([...LINE, ...frozen], 'spring', salty, PUMP).ok).toBe(false);
  });

  it('chemicals take reverse osmosis; where they are not known it is said', () => {
    const hazards = { spring: { chemicals: 'yes' as const } };
    expect(verdictOf(LINE, 'spring', [], { hazards }).ok).toBe(false);
    expect(verdictOf([...LINE, ...OSMOSIS_LINE], 'spring', [], { hazards }).ok).toBe(true);
    expect(textsOf(verdictOf(LINE, 'spring').remarks)).toContain(
      'chemicals are not known, and this line takes out none',
    );
  });

  it('a note ahead of the day is not used, and told with its day', () => {
    const ahead: WaterNote = { id: 'node/1', on: '2026-05-05', saltOk: true };
    expect(noted([ahead], '2026-05-04')).toMatchObject({
      salt: 'none',
      unused: [{ phrase: 'note-ahead', facts: { on: '2026-05-05' } }],
    });
    expect(noted([ahead], '2026-05-05')).toMatchObject({ salt: 'ok', unused: [] });
  });

  it('cloudiness noted stands over what is expected', () => {
    expect(verdictOf([LAMP], 'spring', [note({ turbidityNtu: 3 })]).ok).toBe(false);
    expect(verdictOf([LAMP], 'river', [note({ turbidityNtu: 0.8 })]).ok).toBe(true);
  });
});

describe('notes on salt', () => {
  const saltOf = (...notes: WaterNote[]) => noted(notes, '2026-05-04').salt;

  it.each([
    ['the day itself', '2026-05-04', 'ok'],
    ['a year old', '2025-05-04', 'ok'],
    ['a year and a day old', '2025-05-03', 'none'],
    ['ahead', '2026-05-05', 'none'],
  ])('not salty, %s: %s is %s', (_, on, salt) => expect(saltOf(note({ on }))).toBe(salt));

  it('bad news has no term, and wins on the same day', () => {
    expect(saltOf(note({ on: '2019-01-01', saltOk: false }))).toBe('bad');
    expect(saltOf(note(), note({ saltOk: false }))).toBe('bad');
    expect(saltOf(note({ on: '2026-04-01', saltOk: false }), note())).toBe('ok');
  });
});

describe('the kind of source of a mapped object', () => {
  it.each([
    ['man_made=water_tap', { man_made: 'water_tap' }, 'piped-tap'],
    ['man_made=water_well', { man_made: 'water_well' }, 'bore'],
    ['man_made=water_well', { man_made: 'water_well', drinking_water: 'untreated' }, 'bore'],
    ['man_made=water_well', { man_made: 'water_well', drinking_water: 'yes' }, 'village-well'],
    ['amenity=drinking_water', { amenity: 'drinking_water', man_made: 'water_well' }, 'village-well'],
    ['natural=spring', { natural: 'spring' }, 'spring'],
    // The rule says it where its own tags were merged into an area's.
    ['natural=spring', {}, 'spring'],
    ['drinking_water', { waterway: 'stream', drinking_water: 'untreated' }, 'river'],
    ['drinking_water', { natural: 'water', drinking_water: 'untreated' }, 'river'],
    ['drinking_water', { tourism: 'camp_site', drinking_water: 'untreated' }, 'piped-tap'],
    ['natural=hot_spring', { natural: 'hot_spring' }, 'unknown'],
    ['man_made=storage_tank,content=water', { man_made: 'storage_tank', content: 'water' }, 'unknown'],
  ] as const)('%s %j is a %s', (ruleKey, tags, kind) => expect(sourceKindOf(ruleKey, tags)).toBe(kind));
});

describe('time to fill', () => {
  it('goes by the flow noted', () => {
    expect(timeToFill(70, { litresPerMinute: 3.5, depthM: 10 }, true)).toEqual({
      minutes: 20,
      lPerMin: 3.5,
      how: 'noted',
    });
  });

  it('with rope and bucket grows with the depth: 8 l in 60 s from 10 m (ours)', () => {
    expect(drawnLPerMin(10)).toBeCloseTo(8, 12);
    expect(timeToFill(80, { depthM: 10 }, true)?.minutes).toBeCloseTo(10, 12);
    expect(drawnLPerMin(20)).toBeLessThan(drawnLPerMin(10));
  });

  it('is not known without rope and bucket', () => {
    expect(timeToFill(70, { depthM: 10 }, false)).toBeNull();
    expect(timeToFill(70, {}, true)).toBeNull();
  });
});

describe('cautions of a line', () => {
  const boiling = { kind: 'boiling', minutes: 1 } as const;

  it('name the longer rule where the height of the route is not known', () => {
    const report = reportOn([boiling], {}, { ...WEEK, altitudeM: null });
    expect(report.meetsTarget).toBe(false);
    expect(codesOf(report)).toContain('boiling-height-unknown');
    expect(reportOn([boiling]).meetsTarget).toBe(true);
  });

  it('name frost: what may have frozen, and nights that may do it', () => {
    expect(codesOf(reportOn([ULTRAFILTER], { mayHaveFrozen: true }))).toContain('treatment-frozen');
    const cold = { ...WEEK, coldestNightC: -3 };
    expect(codesOf(reportOn([ULTRAFILTER], {}, cold))).toContain('treatment-may-freeze');
    expect(codesOf(reportOn([ULTRAFILTER]))).not.toContain('treatment-may-freeze');
  });

  it('name what nobody measured', () => {
    const lamp = { ...LAMP, flowLPerMin: 4 };
    const caution = reportOn([lamp]).cautions.find(({ code }) => code === 'treatment-unmeasured');
    expect(caution?.text).toContain('water taken as no faster than 4 l/min');
    expect(codesOf(reportOn([LAMP]))).not.toContain('treatment-unmeasured');
  });

  it('name raw water in the tank where treatment is at the tap', () => {
    expect(codesOf(reportOn([boiling], { at: 'tap' }))).toContain('treatment-at-tap');
    expect(codesOf(reportOn([boiling], { at: 'filling' }))).not.toContain('treatment-at-tap');
  });
});
