import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ExportPack } from '../../../server/app/export/pack.ts';
import type { PlannedTrip } from '../../../server/app/plan-trip.ts';
import type { Sheet } from '../../../server/app/sheet/model/model.ts';
import { suppliesOf } from '../../../server/app/sheet/parts/places.ts';
import { sheetOf } from '../../../server/app/sheet/sheet-of.ts';
import type { Units } from '../../../server/contract/answers/units.ts';
import type { GaugeRow } from '../../../server/contract/whatif.ts';
import type { Language } from '../../../server/words/parts/language.ts';
import { UNIT_PRESETS } from '../../../server/words/parts/reader-units.ts';
import { measuring, speaking } from '../../../server/work/speaking.ts';
import { demoPack } from '../export/packs.ts';
import { allTexts, cellsOf, headlinesOf, partOf, rowsOf, textsOf } from './texts.ts';

let pack: ExportPack;
let without: ExportPack;
beforeAll(async () => {
  pack = await demoPack();
  without = await demoPack(
    ({ departure: _, ...trip }) => ({ ...trip, plan: { ...trip.plan, mostCans: { fuel: 0, water: 0 } } }),
    { extras: true },
  );
});

/** The demo with something of it changed. */
function changed(change: (planned: PlannedTrip) => void): ExportPack {
  const planned = structuredClone(pack.planned);
  change(planned);
  return { ...pack, planned };
}

const answer = (of: ExportPack) => partOf(sheetOf(of), 'answer');
const answerText = (of: ExportPack) => answer(of).blocks.flatMap(textsOf).join('\n');

describe('the answer on top', () => {
  it('is calm where the plan is known to hold, and says what there is without it', () => {
    expect(headlinesOf(answer(pack))).toEqual(['With this plan the reserve is kept all the way.']);
    expect(answerText(pack)).toContain('Fuel runs dry at km 679 without the plan.');
    expect(answerText(pack)).toContain(
      'Water: fill at Ketta town tap (km 127), Mine camp tap (km 850), Hask Gate tap (km 1112).',
    );
    expect(answerText(pack)).toContain('Get 1 fuel can more than you own.');
    expect(answerText(pack)).toContain('pour at km 418 (2), 538, 618.');
    // 566.9 as the plan has it.
    expect(answerText(pack)).toContain('Before km 566 you can still go back to Ketta fuel (km 127)');
    expect(answerText(pack)).toContain('Telephone Mine camp tap (km 850) before you leave');
  });

  it('is not calm over a leg that nobody knows to hold', () => {
    const open = changed(({ plan }) => {
      plan.legs.water[1]!.verdict = 'unknown';
    });
    expect(headlinesOf(answer(open))).toEqual(['Not all of this plan is known to hold.']);
    expect(answerText(open)).toContain(
      'Water: nobody knows whether it holds from Ketta town tap (km 127) to Mine camp tap (km 850).',
    );
    const trouble = rowsOf(partOf(sheetOf(open), 'trouble')).map(cellsOf);
    expect(trouble).toHaveLength(1);
    expect(trouble[0]!.slice(0, 3)).toEqual([
      'Ketta town tap (km 127) to Mine camp tap (km 850)',
      'water',
      'unknown',
    ]);
    const home = partOf(sheetOf(open), 'home').blocks.flatMap(textsOf);
    expect(home).toContain('Not all of the plan is known to hold.');
  });

  it('is not calm over what no map tells of, nor over a closed route', () => {
    const unmapped = changed(({ analysis }) => {
      analysis.noData = ['water'];
    });
    expect(headlinesOf(answer(unmapped))).toEqual(['No map data tells of water on this route.']);
    const closed = changed(({ analysis }) => {
      analysis.cautions = [{ code: 'route-closed', text: 'closed', fromKm: 99.7, toKm: 120 }];
    });
    expect(headlinesOf(answer(closed))[0]).toBe('The route is closed from km 99 to km 120.');
  });

  it('says first that there is no plan, then what breaks it and what would help', () => {
    expect(without.planned.plan.status).toBe('none');
    const texts = answer(without).blocks.flatMap(textsOf);
    expect(texts[0]).toBe('No plan keeps the reserve.');
    for (const { text } of [...without.planned.plan.breaks, ...without.planned.plan.waysOut])
      expect(texts).toContain(text);
    expect(without.planned.plan.waysOut.length).toBeGreaterThan(0);
    expect(texts.join('\n')).not.toContain('is kept');
    const late = { ...without.planned, plan: { ...without.planned.plan, status: 'out-of-time' as const } };
    expect(headlinesOf(answer({ ...without, planned: late }))).toEqual([
      'No plan was found in the time there was: whether there is one is not known.',
    ]);
  });
});

/** Each commodity of each halt has its line, in the order of the road, with its figures. */
function expectStopsOf(of: ExportPack): void {
  const rows = rowsOf(partOf(sheetOf(of), 'stops')).map(cellsOf);
  const supplies = of.planned.plan.sheet.flatMap(({ fuel, water }) =>
    [fuel, water].filter((supply) => supply !== null).toSorted((a, b) => a.at.atKm - b.at.atKm),
  );
  expect(rows).toHaveLength(supplies.length);
  for (const [index, supply] of supplies.entries()) {
    const [, at, name, , arrive, fill, leave, , back] = rows[index]!;
    if (name !== '') {
      expect(name).toBe(supply.at.name);
      expect(at).toBe(String(Math.round(supply.at.atKm)));
    }
    if (supply.arriveL !== null) {
      expect(Number(arrive)).toBeLessThanOrEqual(supply.arriveL + 1e-6);
      expect(Number(arrive)).toBeGreaterThan(supply.arriveL - 1);
    }
    if (supply.fillL > 0) {
      expect(Number(fill)).toBeGreaterThanOrEqual(supply.fillL - 1e-6);
      expect(Number(fill)).toBeLessThan(supply.fillL + 1);
    }
    if (supply.leaveL !== null) {
      expect(Number(leave)).toBeGreaterThanOrEqual(supply.leaveL - 1e-6);
      expect(Number(leave)).toBeLessThan(supply.leaveL + 1);
      if (supply.turnBackKm !== null) expect(Number(back)).toBeLessThanOrEqual(supply.turnBackKm);
    }
  }
}

describe('the stops', () => {
  it('are every halt of the plan', () => {
    expectStopsOf(pack);
    const names = rowsOf(partOf(sheetOf(pack), 'stops')).map((row) => cellsOf(row)[2]);
    for (const { passings } of pack.planned.plan.stops)
      for (const { name, used } of passings) if (used) expect(names).toContain(name);
  });

  it('have litres and places to turn back rounded to the side that one can rely on, whatever they are', () => {
    const litres = fc.double({ min: 0, max: 300, noNaN: true });
    const figures = fc.record({ arriveL: litres, fillL: litres, leaveL: litres, turnBackKm: litres });
    fc.assert(
      fc.property(fc.array(figures, { minLength: 8, maxLength: 8 }), (all) => {
        const told = [...all];
        expectStopsOf(
          changed(({ plan }) => {
            for (const { fuel, water, kind } of plan.sheet)
              for (const supply of [fuel, water])
                if (supply !== null && kind === 'stop') Object.assign(supply, told.pop());
          }),
        );
      }),
      { numRuns: 20 },
    );
  });

  it('say what is not known: telephone, hours, way back, whether the next is reached', () => {
    const seconds = (of: ExportPack) =>
      rowsOf(partOf(sheetOf(of), 'stops')).flatMap(({ cells }) => cells.map(({ second }) => second));
    expect(seconds(pack).join('\n')).toContain(
      '37.09448 S, 85.44870 E; no telephone listed; hours not known; 0.1 km off the route; day 1, 2027-05-03',
    );
    const other = changed(({ plan }) => {
      plan.legs.fuel[1]!.verdict = 'unknown';
      const halt = plan.sheet.find(({ fuel }) => fuel?.at.id === plan.legs.fuel[1]!.from.id)!;
      halt.fuel!.turnBackKm = null;
      halt.fuel!.contact = { phone: '+61 1', website: null, openingHours: null };
    });
    expect(seconds(other).filter((text) => text === 'not known whether it holds')).toHaveLength(1);
    expect(seconds(pack)).not.toContain('not known whether it holds');
    expect(seconds(other).join('\n')).toContain('telephone +61 1; hours not known');
    expect(rowsOf(partOf(sheetOf(other), 'stops')).map((row) => cellsOf(row).at(-1))).toContain('none');
    expect(rowsOf(partOf(sheetOf(pack), 'stops')).map((row) => cellsOf(row).at(-1))).not.toContain('none');
  });

  it('are all there on a long plan, each in fewer words, and what is not known is said once', () => {
    const long = changed(({ plan }) => {
      const [, stop] = plan.sheet;
      plan.sheet.splice(2, 0, ...Array.from({ length: 60 }, () => structuredClone(stop!)));
    });
    const part = partOf(sheetOf(long), 'stops');
    const rows = rowsOf(part).map(cellsOf);
    expect(rows.filter(([, , name]) => name === 'Ketta fuel')).toHaveLength(61);
    const texts = part.blocks.flatMap(textsOf).join('\n');
    expect(texts).not.toContain('no telephone listed;');
    expect(texts).toContain(
      'Where no telephone stands none is listed, where no hours stand they are not known',
    );
  });
});

describe('the stretches that do not hold', () => {
  it('are all there without a plan, the others counted, with the supplies at their ends', () => {
    const { fuel, water } = without.planned.analysis;
    const gaps = [...fuel.gaps, ...water.gaps];
    const part = partOf(sheetOf(without), 'trouble');
    const bad = gaps.filter(({ verdict }) => verdict !== 'enough');
    const rows = rowsOf(part).map(cellsOf);
    expect(rows.filter(([, of]) => of === 'fuel' || of === 'water')).toHaveLength(bad.length);
    expect(part.blocks.flatMap(textsOf)).toContain(
      `And ${gaps.length - bad.length} more stretches, all enough.`,
    );
    expect(part.blocks.flatMap(textsOf)).toContain(
      'As the route stands, with full tanks at every supply that counts and cans empty.',
    );
    expect(rows.map(([, name]) => name)).toContain('Dune station');
    expect(sheetOf(without).parts.map(({ name }) => name)).not.toContain('stops');
  });

  it('are the worst of many, and what is left out is counted by its verdict', () => {
    const dense: ExportPack = { ...without, planned: structuredClone(without.planned) };
    const { gaps } = dense.planned.analysis.fuel;
    const short = gaps.find(({ verdict }) => verdict === 'short')!;
    const enough = gaps.find(({ verdict }) => verdict === 'enough')!;
    dense.planned.analysis.water.gaps = [];
    dense.planned.analysis.fuel.gaps = [
      ...Array.from({ length: 1720 }, () => enough),
      ...Array.from({ length: 30 }, (_, index) => ({ ...short, marginL: -index })),
    ];
    const part = partOf(sheetOf(dense), 'trouble');
    const missing = rowsOf(part)
      .map((row) => cellsOf(row)[6])
      .slice(0, 18);
    expect(missing.map(Number)).toEqual(Array.from({ length: 18 }, (_, index) => index + 12));
    const texts = part.blocks.flatMap(textsOf);
    expect(texts).toContain('And 1720 more stretches, all enough.');
    expect(texts).toContain('And 12 more: short.');
  });
});

describe('the gauge', () => {
  const rowAt = (atKm: number, at: GaugeRow['at'] = 'step'): GaugeRow => ({
    ...pack.planned.gauge.rows[1]!,
    atKm,
    at,
  });

  it('has each place to act, needs rounded up and what is planned down', () => {
    const rows = rowsOf(partOf(sheetOf(pack), 'gauge')).map(cellsOf);
    const acts = pack.planned.gauge.rows.filter(({ at }) => at !== 'step');
    expect(rows.filter(([, place]) => place !== '')).toHaveLength(acts.length);
    const [at, place, on, mark, back, planned] = rows.find(([, words]) =>
      words?.includes('turn back for fuel'),
    )!;
    // 566.9 km, 111.2 and 132.x of 132.4 litres: see the gauge of the command line.
    expect([at, place, on, back, planned]).toEqual([
      '566',
      'last place to turn back for fuel',
      '112',
      '133',
      '132',
    ]);
    // One can of five is left: 92 l in a tank of 127 are 5.8 eighths.
    expect(mark).toBe('3/4 + 1');
  });

  it('is thinned out to a page and says so', () => {
    const many = changed(({ gauge }) => {
      gauge.rows = Array.from({ length: 400 }, (_, index) => rowAt(index * 50));
    });
    const part = partOf(sheetOf(many), 'gauge');
    expect(rowsOf(part).map((row) => cellsOf(row)[0])).toEqual(
      Array.from({ length: 25 }, (_, index) => String(index * 800)),
    );
    expect(part.blocks.flatMap(textsOf)).toContain(
      'A line every 800 km; the command plan prints one every 50 km.',
    );
    const stops = changed(({ gauge }) => {
      gauge.rows = Array.from({ length: 1700 }, (_, index) => rowAt(index, 'arriving'));
      gauge.rows.push(rowAt(1700, 'end'));
    });
    const few = partOf(sheetOf(stops), 'gauge');
    expect(rowsOf(few)).toHaveLength(1);
    expect(few.blocks.flatMap(textsOf).join('\n')).toContain('too many stops for a line each');
  });

  it('shows no mark where no one gauge shows what is aboard', () => {
    const two = changed(({ analysis }) => {
      analysis.rig.fuel.tanks.push({ name: 'second', litres: 60 });
    });
    const part = partOf(sheetOf(two), 'gauge');
    expect(rowsOf(part)[0]!.cells).toHaveLength(rowsOf(partOf(sheetOf(pack), 'gauge'))[0]!.cells.length - 1);
    expect(part.blocks.flatMap(textsOf).join('\n')).toContain(
      'fuel in several tanks or none: no one gauge shows it',
    );
  });
});

describe('the other parts', () => {
  it('tell what is not borne, what to check, the cautions and the dates of the data', () => {
    const sheet = sheetOf(pack);
    const { whatIf, analysis } = pack.planned;
    const failing = whatIf.rows.filter(({ verdict }) => verdict !== 'enough');
    const whatIfs = partOf(sheet, 'what-ifs').blocks.flatMap(textsOf);
    const worst = failing.toSorted((a, b) => a.marginL - b.marginL)[0]!;
    expect(whatIfs[0]).toContain(worst.text);
    expect(whatIfs).toContain(`And ${failing.length - 7} more: the command plan and the page name them all.`);
    expect(whatIfs).toContain(
      `${whatIf.rows.length - failing.length} more were tried and are borne with the reserve.`,
    );
    const checks = partOf(sheet, 'check').blocks;
    expect(checks[0]).toMatchObject({ kind: 'list', toTick: true });
    expect(checks.flatMap(textsOf)).toHaveLength(whatIf.callFirst.length);
    const cautions = partOf(sheet, 'cautions').blocks.flatMap(textsOf);
    for (const { text } of analysis.standing) expect(cautions[0]).toContain(text);
    for (const { text } of pack.planned.plan.restsOn) expect(cautions.join('\n')).toContain(text);
    expect(partOf(sheet, 'data').blocks.flatMap(textsOf)).toEqual([
      'Map data: orrimar.osm.pbf, as of 2026-04-01. Orrimar is invented. Do not drive by it.',
    ]);
    expect(sheet.dates).toBe('made 2026-11-30 · map data 2026-04-01');
    expect(sheetOf({ ...pack, notice: 'Invented land.' }).foot).toContain('Invented land.');
  });

  it('have a page for somebody at home, with the hour after which to call for help', () => {
    const home = partOf(sheetOf(pack), 'home');
    expect(home.startsPage).toBe(true);
    const alarms = pack.planned.plan.sheet.flatMap(({ water }) => (water?.alarm == null ? [] : [water]));
    expect(alarms).toHaveLength(4);
    const rows = rowsOf(home).map(cellsOf);
    for (const { at, alarm } of alarms)
      expect(rows.some(([name, , by]) => name?.startsWith(at.name ?? '?') && by === alarm?.by)).toBe(true);
    const nights = pack.planned.analysis.days.rows;
    expect(rows).toHaveLength(alarms.length + nights.length);
    const texts = home.blocks.flatMap(textsOf);
    expect(texts).toContain('Leaves on 2027-05-03.');
    expect(texts).toContain(
      'Expected at the end of the route from 2027-05-13, at the slow pace on 2027-05-15.',
    );
    expect(texts).toContain('No telephone is listed for any stop.');
    const untold = sheetOf(without);
    expect(partOf(untold, 'home').blocks.flatMap(textsOf).join('\n')).toContain('was not reckoned');
    expect(partOf(untold, 'home').blocks.flatMap(textsOf)).toContain(
      'There is no plan that keeps the reserve: ask them not to leave before there is one.',
    );
  });

  it('hold no control character and no text that runs away, whatever names there are', () => {
    const name = `a\u0007b\u202e${'x'.repeat(500)}`;
    const nasty = changed(({ plan }) => {
      for (const { fuel } of plan.sheet) if (fuel !== null) fuel.at.name = name;
    });
    const texts = allTexts(sheetOf({ ...nasty, route: { ...pack.route, name } }));
    expect(texts.some((text) => text.includes('xxx'))).toBe(true);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    for (const text of texts) expect(text).not.toMatch(/[\u0000-\u001f\u202e]/);
  });
});

describe('the sheet in the reader’s units and language', () => {
  const read = (units: Units, spoken: Language, of = pack): Sheet =>
    speaking(spoken, () => measuring(units, () => sheetOf(of)));
  const supplies = () =>
    pack.planned.plan.sheet.flatMap((halt) => suppliesOf(halt).map(({ supply }) => supply));

  it('has miles and gallons of the figures that it has in km and l, rounded to the same side', () => {
    const [metric, us] = [read(UNIT_PRESETS.metric, 'en'), read(UNIT_PRESETS.us, 'en')];
    const figures = supplies().map(({ at, arriveL, fillL, leaveL, turnBackKm }) => ({
      atKm: at.atKm,
      arriveL,
      fillL,
      leaveL,
      turnBackKm,
    }));
    const [rows, usRows] = [metric, us].map((sheet) => rowsOf(partOf(sheet, 'stops')).map(cellsOf));
    expect(usRows).toHaveLength(figures.length);
    let compared = 0;
    figures.forEach(({ atKm, arriveL, fillL, leaveL, turnBackKm }, index) => {
      const cells = usRows![index]!;
      if (cells[1] !== '') expect(cells[1]).toBe(String(Math.round(atKm / 1.609344)));
      const up = (litres: number) => String(Math.ceil((litres / 3.785411784) * 10 - 1e-6) / 10);
      if (arriveL !== null)
        expect(cells[4]).toBe(String(Math.floor((arriveL / 3.785411784) * 10 + 1e-6) / 10));
      if (fillL > 0) expect(cells[5]).toBe(up(fillL));
      if (leaveL !== null) expect(cells[6]).toBe(up(leaveL));
      if (leaveL !== null && turnBackKm !== null) {
        expect(cells[8]).toBe(String(Math.floor(turnBackKm / 1.609344)));
        expect(rows![index]![8]).toBe(String(Math.floor(turnBackKm)));
        compared += 1;
      }
    });
    expect(compared).toBeGreaterThan(2);
    const units = us.parts.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'table' ? block.columns.map(({ unit }) => unit) : [])),
    );
    expect(new Set(units)).toEqual(new Set(['', 'mi', 'US gal', 'h']));
    const texts = allTexts(us).join('\n');
    expect(texts).not.toMatch(/\d km\b|\bkm \d|\d l\b/);
    // Marks of the gauge are of the gauge, whatever the units.
    expect(rowsOf(partOf(us, 'gauge')).map((one) => cellsOf(one)[3])).toEqual(
      rowsOf(partOf(metric, 'gauge')).map((one) => cellsOf(one)[3]),
    );
  });

  it('takes litres with miles', () => {
    const mixed = read({ ...UNIT_PRESETS.us, volume: 'L' }, 'en');
    const [column] = partOf(mixed, 'stops').blocks.flatMap((block) =>
      block.kind === 'table' ? [block.columns] : [],
    );
    expect(column!.map(({ unit }) => unit)).toEqual(['', 'mi', '', '', 'l', 'l', 'l', '', 'mi']);
  });

  it('is German where German is spoken, decimals with commas', async () => {
    const german = await speaking('de', demoPack);
    const sheet = read(UNIT_PRESETS.metric, 'de', german);
    expect(sheet.parts.map(({ heading }) => heading)).toContain('Die Halte der Reihe nach');
    expect(sheet.foot).toContain('Trinkwasser niemals rationieren');
    const texts = allTexts(sheet).join('\n');
    expect(texts).not.toMatch(/\b(?:with|and|cans|fill|leave|before|not known|invented)\b/i);
    expect(rowsOf(partOf(sheet, 'days')).map((one) => cellsOf(one)[3])).toContainEqual(
      expect.stringMatching(/^\d+,\d$/),
    );
  });
});
