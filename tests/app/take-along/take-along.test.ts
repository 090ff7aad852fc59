import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ExportPack } from '../../../server/app/export/pack.ts';
import { takeAlongFile } from '../../../server/app/take-along/take-along-file.ts';
import type { CabBasis } from '../../../server/core/cab/cab-runs.ts';
import { type CabAsk, cabState } from '../../../server/core/cab/cab-state.ts';
import { COMMODITIES } from '../../../server/core/quantity/commodities.ts';
import { cabProgram } from '../../../server/io/cab-program.ts';
import { SEED, worldsOf } from '../../checker/trips.ts';
import { randomFrom } from '../../faults/random.ts';
import { describeSlowReal } from '../../helpers/real.ts';
import { demoPack } from '../export/packs.ts';
import { cabFileIn, partsOf, statesIn } from './file-parts.ts';
import { swissPack, worldPack } from './planned-packs.ts';

const TWO_MB = 2_000_000;
const bytesOf = (html: string): number => new TextEncoder().encode(html).length;
/** Of all elements the names, in order; what stands in scripts is none. */
function elementsIn(html: string): string[] {
  const { script, json } = partsOf(html);
  const markup = html.replace(script, '').replace(json, '');
  return [...markup.matchAll(/<([a-z][a-z0-9]*)/g)].map(([, name = '']) => name);
}

const fileOf = async (pack: ExportPack): Promise<string> => takeAlongFile(pack, await cabProgram());

function basisOf({ planned }: ExportPack): CabBasis {
  if (planned.cab === undefined) throw new Error('no cab');
  return planned.cab;
}

/** States anywhere on a route, at and beside its stops, with tanks from empty to more than they hold, stops failing. */
function statesOf(pack: ExportPack, count: number, seed: number): CabAsk[] {
  const random = randomFrom(seed);
  const { runs } = basisOf(pack);
  const { lengthM } = pack.route;
  const edges = COMMODITIES.flatMap((each) => runs[each].planned.map(({ to }) => to));
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  return Array.from({ length: count }, (): CabAsk => {
    const isAtStop = random() < 0.3;
    const litres = () => (random() < 0.05 ? null : random() * 260);
    const failed = () => (random() < 0.25 ? [pick(edges)?.id ?? 'none', pick(edges)?.id ?? 'none'] : []);
    return {
      atM: isAtStop ? (pick(edges)?.atM ?? 0) : random() * lengthM,
      left: isAtStop && random() < 0.5,
      litres: { fuel: litres(), water: litres() },
      failed: { fuel: failed(), water: failed() },
    };
  });
}

/** Names stand as words in the file; all else is the same to the last digit. */
const bare = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, one: unknown) => (key === 'name' ? undefined : one)));

/** Holds what the file says against what the server says, and tells which answers there were. */
function sameStates(html: string, pack: ExportPack, count: number, seed: number): Set<string> {
  const asks = statesOf(pack, count, seed);
  const { runs } = basisOf(pack);
  const own = asks.map((ask) => cabState(runs, ask));
  expect(bare(statesIn(html, asks))).toEqual(bare(own));
  return new Set(own.map(({ answer }) => answer));
}

describe('the file to take along', { tags: 'slow' }, () => {
  let pack: ExportPack;
  let without: ExportPack;
  let html: string;
  beforeAll(async () => {
    pack = await demoPack(undefined, { cab: true });
    without = await demoPack(
      (trip) => ({ ...trip, plan: { ...trip.plan, mostCans: { fuel: 0, water: 0 } } }),
      { cab: true },
    );
    html = await fileOf(pack);
  });

  it('says of 1,000 states just what the server says, with a plan and without', async () => {
    expect(pack.planned.plan.status).toBe('found');
    expect(without.planned.plan.status).toBe('none');
    const answers = sameStates(html, pack, 600, 1);
    expect(answers).toEqual(
      new Set(['on', 'back', 'reserve', 'reserve-on', 'reserve-back', 'unknown', 'none', 'unread']),
    );
    sameStates(await fileOf(without), without, 400, 2);
  });

  it('says the same of random trips', async () => {
    const answers = new Set<string>();
    for (const [number, world] of worldsOf(6, SEED).entries()) {
      const drawn = worldPack(world);
      for (const answer of sameStates(await fileOf(drawn), drawn, 100, number)) answers.add(answer);
    }
    expect(answers.size).toBeGreaterThan(5);
  });

  it('is small, whole, and may run its own program alone and fetch nothing', () => {
    expect(bytesOf(html)).toBeLessThan(TWO_MB / 2);
    const { script, policy } = partsOf(html);
    const hash = createHash('sha256').update(script).digest('base64');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain(`script-src 'sha256-${hash}';`);
    expect(/<!--|<\/script/i.test(script)).toBe(false);
    expect(elementsIn(html).filter((name) => name === 'script')).toHaveLength(2);
    const outside = html.replace(script, '');
    expect(/\s(?:src|href)=|url\(|@import/.exec(outside)).toBeNull();
  });

  it('takes no name for markup', async () => {
    const nasty = '</script><script>alert(1)</script><!-- "&<b>\u2028';
    const file = await fileOf({ ...pack, route: { ...pack.route, name: nasty }, notice: nasty });
    expect(elementsIn(file)).toEqual(elementsIn(html));
    expect(file.includes('<!-- ')).toBe(false);
    expect(cabFileIn(file)).toMatchObject({ route: nasty, notice: nasty });
  });

  it('has every halt of the plan in order, with what is filled there and whom to ask', () => {
    const { marks, contacts } = cabFileIn(html);
    const halts = pack.planned.plan.sheet.filter(({ kind }) => kind === 'stop');
    expect(halts.length).toBeGreaterThan(2);
    for (const { fuel, water } of halts)
      for (const [what, supply] of [
        ['diesel', fuel],
        ['water', water],
      ] as const) {
        if (supply === null) continue;
        const mark = marks.find(
          ({ kind, atM, todo }) =>
            kind === 'stop' &&
            Math.abs(atM - supply.at.atKm * 1000) < 0.01 &&
            todo.some((words) => words.startsWith(`${what}: `)),
        );
        expect(mark?.todo.join('\n')).toContain(`fill ${Math.ceil(supply.fillL)}\u00a0L`);
        expect(mark?.contact).toEqual({
          phone: supply.contact?.phone ?? null,
          openingHours: supply.contact?.openingHours ?? null,
        });
        expect(contacts[supply.at.id ?? '']).toEqual(mark?.contact);
      }
    expect(marks.map(({ atM }) => atM)).toEqual(marks.map(({ atM }) => atM).toSorted((a, b) => a - b));
  });

  it('lists the supplies that count and that the plan goes by, each once', () => {
    const { others } = cabFileIn(html);
    const { plan, analysis } = pack.planned;
    const used = COMMODITIES.flatMap((each) =>
      plan.legs[each]
        .filter(({ to }) => to.kind === 'passing')
        .map(({ to }) => `${each} ${to.id} ${to.atKm}`),
    );
    const expected = analysis.passings.filter(
      ({ counts, commodity, id, atKm }) => counts && !used.includes(`${commodity} ${id} ${atKm}`),
    );
    expect(used.length).toBeGreaterThan(3);
    expect(others.map(({ commodity, atM }) => `${commodity} ${Math.round(atM)}`)).toEqual(
      expected.map(({ commodity, atKm }) => `${commodity} ${Math.round(atKm * 1000)}`),
    );
  });

  it('has the parts of the sheet below, but for the page that stays at home', () => {
    for (const words of ['Gauge: the least to have aboard', 'The stops in order', 'To check before leaving'])
      expect(html.includes(`<h2>${words}</h2>`), words).toBe(true);
    expect(html.includes('Never ration drinking water')).toBe(true);
    expect(elementsIn(html)).toContain('svg');
  });
});

describeSlowReal('the file to take along of a dense route', () => {
  it('is under 2 MB and says what the server says', async () => {
    const pack = await swissPack();
    expect(pack.planned.plan.status).toBe('found');
    const html = await fileOf(pack);
    expect(bytesOf(html)).toBeLessThan(TWO_MB);
    expect(cabFileIn(html).others.length).toBeGreaterThan(1_500);
    sameStates(html, pack, 200, 3);
  });
});
