import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { csvFile } from '../../../server/app/export/csv-file.ts';
import { geojsonFile } from '../../../server/app/export/geojson-file.ts';
import { gpxFile } from '../../../server/app/export/gpx-file.ts';
import { icsFile } from '../../../server/app/export/ics-file.ts';
import { type Mark, marksOf } from '../../../server/app/export/marks.ts';
import type { ExportPack } from '../../../server/app/export/pack.ts';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { gpxNotes } from '../../../server/io/notes/gpx-notes.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { demoPack } from './packs.ts';

let pack: ExportPack;
let without: ExportPack;
beforeAll(async () => {
  pack = await demoPack();
  without = await demoPack(({ departure: _, ...trip }) => ({
    ...trip,
    plan: { ...trip.plan, mostCans: { fuel: 0, water: 0 } },
  }));
});

/** Names and words that no format takes as they are. */
const NASTY = `=HYPERLINK("x") <b>&amp;\u0007; "Quote", Ärmelkanal \u{1F4A7}\nline`;
const named = (name: string): ExportPack => ({
  ...pack,
  route: { ...pack.route, name },
  planned: {
    ...pack.planned,
    plan: {
      ...pack.planned.plan,
      sheet: pack.planned.plan.sheet.map((halt) => ({
        ...halt,
        fuel: halt.fuel === null ? null : { ...halt.fuel, at: { ...halt.fuel.at, name } },
      })),
    },
  },
});

const kinds = (marks: readonly Mark[]) => new Set(marks.map(({ kind }) => kind));

describe('the places to know', () => {
  it('are each halt, turn-back point and pour of the plan, as the plan and the gauge have them', () => {
    const { plan, gauge } = pack.planned;
    expect(plan.status).toBe('found');
    const marks = marksOf(pack);
    for (const commodity of ['fuel', 'water'] as const) {
      for (const { atKm } of plan.stops
        .flatMap(({ passings }) => passings)
        .filter((each) => each.commodity === commodity && each.used))
        expect(
          marks.some(
            (mark) => mark.kind === 'stop' && mark.commodities.includes(commodity) && mark.atKm === atKm,
          ),
        ).toBe(true);
      const pours = plan.carries
        .filter((carry) => carry.commodity === commodity)
        .flatMap(({ pourAtKm }) => pourAtKm);
      expect(
        marks
          .filter((mark) => mark.kind === 'pour' && mark.commodities.includes(commodity))
          .map(({ atKm }) => atKm),
      ).toEqual(pours.toSorted((a, b) => a - b));
      const turns = gauge.rows.filter(
        ({ at, commodities }) => at === 'turn-back' && commodities.includes(commodity),
      );
      expect(turns.length).toBeGreaterThan(0);
      expect(
        marks
          .filter((mark) => mark.kind === 'turn-back' && mark.commodities.includes(commodity))
          .map(({ atKm }) => atKm),
      ).toEqual(turns.map(({ atKm }) => atKm));
    }
    expect(kinds(marks)).toEqual(new Set(['start', 'stop', 'turn-back', 'pour', 'night', 'caution', 'end']));
    expect(marks.map(({ atKm }) => atKm)).toEqual(marks.map(({ atKm }) => atKm).toSorted((a, b) => a - b));
    for (const { name } of marks) expect(name.length).toBeLessThanOrEqual(40);
  });

  it('are rounded to the side that one can rely on, and say where nobody knows whether a leg holds', () => {
    const changed = structuredClone(pack.planned);
    const [leg] = changed.plan.legs.fuel.filter(({ from }) => from.kind === 'passing');
    leg!.verdict = 'unknown';
    const doubtful = { ...pack, planned: changed };
    const halt = changed.plan.sheet.find(({ fuel }) => fuel?.at.id === leg!.from.id)!.fuel!;
    Object.assign(halt, { arriveL: 20.9, fillL: 100.1, leaveL: 120.3, turnBackKm: 566.92 });
    const mark = marksOf(doubtful).find(({ supply }) => supply === halt)!;
    expect(mark.words).toContain('arrive with 20 l, fill 101 l, leave with 121 l');
    expect(mark.words).toContain(
      'not known whether that is reached with the reserve, turn back before km 566',
    );
    expect(gpxFile(doubtful)).toContain('Not all stretches of the plan are known to hold.');
    expect(gpxFile(pack)).not.toContain('Not all stretches');
    for (const { kind, name, atKm } of marksOf(pack))
      if (kind === 'turn-back') expect(Number(name.split(' ').at(-1))).toBeLessThanOrEqual(atKm);
  });

  it('say of what no map tells, and do not call a plan impossible that was only not found', () => {
    const analysis = { ...pack.planned.analysis, noData: ['water' as const] };
    expect(gpxFile({ ...pack, planned: { ...pack.planned, analysis } })).toContain(
      'No map data tells of water',
    );
    const plan = { ...without.planned.plan, status: 'out-of-time' as const };
    const text = gpxFile({ ...without, planned: { ...without.planned, plan } });
    expect(text).toContain('whether there is one is not known');
    expect(text).not.toContain('There is no carry plan');
  });

  it('are without a plan where the reserve is met and where nothing is left, and say that there is none', () => {
    expect(without.planned.plan.status).toBe('none');
    const marks = marksOf(without);
    const { gaps } = without.planned.analysis.fuel;
    const dry = gaps.flatMap(({ runsDryKm }) => (runsDryKm === null ? [] : [runsDryKm]));
    expect(dry.length).toBeGreaterThan(0);
    expect(
      marks
        .filter(({ kind, commodities }) => kind === 'dry' && commodities[0] === 'fuel')
        .map(({ atKm }) => atKm),
    ).toEqual(dry);
    expect(kinds(marks).has('pour')).toBe(false);
    expect(gpxFile(without)).toContain('There is no carry plan that keeps the reserve.');
  });
});

describeReal('GPX', () => {
  const valid = async (text: string) => {
    const schema = readFileSync(realPath('schema/gpx11.xsd'), 'utf8');
    const { valid, errors } = await validateXML({ xml: text, schema });
    return { valid, errors: errors.map(({ message }) => message) };
  };

  it('is valid by the schema of GPX 1.1, whatever names there are', async () => {
    for (const one of [pack, without, named(NASTY)])
      expect(await valid(gpxFile(one))).toEqual({ valid: true, errors: [] });
    // The check can fail.
    expect((await valid(gpxFile(pack).replace('<name>', '<nom>').replace('</name>', '</nom>'))).valid).toBe(
      false,
    );
  });
});

describe('GPX', () => {
  it('holds every place and every point of the route', () => {
    const { waypoints } = gpxNotes(gpxFile(pack), 'x.gpx');
    const marks = marksOf(pack);
    expect(waypoints.map(({ name }) => name)).toEqual(marks.map(({ name }) => name));
    for (const [index, { lon, lat }] of waypoints.entries()) {
      expect(lon).toBeCloseTo(marks[index]!.lon, 7);
      expect(lat).toBeCloseTo(marks[index]!.lat, 7);
    }
    expect(gpxFile(pack).match(/<trkpt /g)).toHaveLength(pack.route.lon.length);
  });

  it('draws no line where the route only jumps', () => {
    const { route } = pack;
    const [fromM, toM] = [route.atM[100]!, route.atM[101]!];
    const torn = { ...pack, route: { ...route, sketchy: [{ kind: 'bridge' as const, fromM, toM }] } };
    const segments = gpxFile(torn).split('<trkseg>').slice(1);
    expect(segments.map((segment) => segment.match(/<trkpt /g)?.length)).toEqual([
      101,
      route.lon.length - 101,
    ]);
  });
});

describe('GeoJSON', () => {
  it('holds every place, positions within the world, and the route', () => {
    const { features } = JSON.parse(geojsonFile(named(NASTY)));
    const marks = marksOf(named(NASTY));
    expect(features).toHaveLength(marks.length + 1);
    expect(features[0].geometry.coordinates.flat()).toHaveLength(pack.route.lon.length);
    expect(features.slice(1).map((feature: { properties: Mark }) => feature.properties.name)).toEqual(
      marks.map(({ name }) => name),
    );
  });

  it('is cut where it crosses the 180th meridian, east and west (RFC 7946, 3.1.9)', () => {
    for (const [lons, edges] of [
      [
        [179, 181, 182],
        [180, -180],
      ],
      [
        [-179, -181, -182],
        [-180, 180],
      ],
    ] as const) {
      const line = {
        ...pack.route,
        lon: Float64Array.from(lons),
        lat: Float64Array.from([10, 12, 12]),
        atM: Float64Array.from([0, 1e5, 2e5]),
      };
      const { features } = JSON.parse(geojsonFile({ ...pack, route: line }));
      const [first, second, ...more] = features[0].geometry.coordinates;
      expect(more).toEqual([]);
      expect(first.at(-1)).toEqual([edges[0], 11]);
      expect(second[0]).toEqual([edges[1], 11]);
      for (const [lon] of [...first, ...second]) expect(Math.abs(lon)).toBeLessThanOrEqual(180);
    }
  });
});

describe('CSV', () => {
  it('is read by another reader with its units in the heads, and runs no formula', () => {
    const { data, errors, meta } = Papa.parse<Record<string, string>>(csvFile(named(NASTY)).slice(1), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(meta.fields).toContain('fill (l)');
    const marks = marksOf(named(NASTY));
    expect(data).toHaveLength(marks.length);
    for (const [index, row] of data.entries()) {
      expect(Number(row['at (km)'])).toBeCloseTo(marks[index]!.atKm, 2);
      expect(Number(row['latitude (degrees)'])).toBeCloseTo(marks[index]!.lat, 6);
      expect(row.name).not.toMatch(/^[=+\-@]/);
      const fillL = marks[index]!.supply?.fillL;
      expect(row['fill (l)']).toBe(fillL === undefined ? '' : String(Number(fillL.toFixed(1))));
    }
  });
});

describe('iCalendar', () => {
  const read = (text: string) =>
    new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));

  it('is read by another reader: a whole day for each day of the drive, and the days to confirm', () => {
    const text = icsFile(named(NASTY));
    const events = read(text);
    const { rows } = pack.planned.analysis.days;
    const days = events.filter(({ summary }) => summary.startsWith('Day '));
    expect(days.map(({ startDate }) => startDate.toString())).toEqual(rows.map(({ date }) => date));
    expect(days.every(({ startDate }) => startDate.isDate)).toBe(true);
    // 60 days for fuel and 30 for water before 3 May 2027, by hand.
    const confirm = events
      .filter(({ summary }) => summary.startsWith('Confirm'))
      .map(({ startDate }) => startDate.toString());
    expect(pack.planned.analysis.trip.departure).toBe('2027-05-03');
    expect(confirm).toEqual(['2027-03-04', '2027-04-03', '2027-04-26']);
    const ids = events.map(({ uid }) => uid);
    expect(new Set(ids).size).toBe(ids.length);
    for (const line of text.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  });

  it('needs a day of departure', () => {
    expect(() => icsFile(without)).toThrow(InputProblem);
    expect(() => icsFile(without)).toThrow('departure');
  });
});
