import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PlanReply } from '../../../server/contract/whatif.ts';
import { ASK_MS, type Asked, Planner, QUIET_MS, SLOW_MS } from '../../../web/state/planner.ts';
import { samplePlan } from '../sample-plan.ts';
import { sampleReply } from '../sample-reply.ts';

const { rig, trip } = sampleReply().analysis;
const asked = (more: Partial<Asked> = {}): Asked => ({ id: 'a', rig, trip, ...more });

/** A request that waits for its answer. */
interface Sent {
  path: string;
  extras: boolean;
  signal: AbortSignal;
  answer: (reply: PlanReply) => Promise<void>;
  refuse: (status: number, code: string) => Promise<void>;
  drop: () => Promise<void>;
}
let sent: Sent[];
/** Names of plans that were asked for while they were made, and what is there by then. */
let meanwhile: string[];
let soFar: PlanReply | null;
let planner: Planner;
let lost: number;

const passes = async (ms: number): Promise<void> => {
  await vi.advanceTimersByTimeAsync(ms);
};
const quiet = () => passes(QUIET_MS);
const settle = () => passes(0);

beforeEach(() => {
  vi.useFakeTimers({ now: 1_000_000 });
  sent = [];
  meanwhile = [];
  soFar = null;
  lost = 0;
  planner = new Planner();
  planner.onLost = () => {
    lost += 1;
  };
  vi.stubGlobal('fetch', (path: string, init: RequestInit) => {
    const signal = init.signal!;
    if (path.startsWith('/api/plans/')) {
      meanwhile.push(path);
      const none = new Response(null, { status: 204 });
      return Promise.resolve(soFar === null ? none : new Response(JSON.stringify(soFar), { status: 200 }));
    }
    return new Promise<Response>((resolve, reject) => {
      signal.addEventListener('abort', () => reject(new DOMException('called off', 'AbortError')));
      const body = JSON.parse(String(init.body)) as { extras: boolean };
      const respond = (text: string, status: number) => {
        resolve(new Response(text, { status }));
        return settle();
      };
      sent.push({
        path,
        extras: body.extras,
        signal,
        answer: (reply) => respond(JSON.stringify(reply), 200),
        refuse: (status, code) =>
          respond(JSON.stringify({ code, title: 'Refused', detail: 'It is refused.' }), status),
        drop: () => {
          reject(new TypeError('no network'));
          return settle();
        },
      });
    });
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A plan in full for what is asked. */
async function made(of = asked()): Promise<void> {
  planner.want(of);
  await quiet();
  await sent.at(-1)!.answer(samplePlan());
  await sent.at(-1)!.answer(samplePlan());
}

describe('a plan in the background', () => {
  it('is made without what takes longest, which is asked for once somebody looks', async () => {
    planner.want(asked(), false);
    await quiet();
    expect(sent.map(({ extras }) => extras)).toEqual([false]);
    await sent[0]!.answer(samplePlan());
    await passes(10 * SLOW_MS);
    expect(sent).toHaveLength(1);
    expect(planner.read()).toMatchObject({ whole: false, slowSince: null, problem: null });
    planner.want(asked(), true);
    await quiet();
    expect(sent.map(({ extras }) => extras)).toEqual([false, true]);
    await sent[1]!.answer(samplePlan());
    expect(planner.read().whole).toBe(true);
    planner.want(asked(), false);
    planner.want(asked(), true);
    await passes(10 * SLOW_MS);
    expect(sent).toHaveLength(2);
  });

  it('goes on to all of it where somebody looks while it is made, and is not called off where nobody does any more', async () => {
    planner.want(asked(), false);
    await quiet();
    planner.want(asked(), true);
    await sent[0]!.answer(samplePlan());
    expect(sent.map(({ extras }) => extras)).toEqual([false, true]);
    planner.want(asked(), false);
    expect(sent[1]!.signal.aborted).toBe(false);
    await sent[1]!.answer(samplePlan());
    expect(planner.read().whole).toBe(true);
  });
});

describe('a plan that takes long', () => {
  /** With a can more. */
  const other = (): PlanReply => {
    const reply = samplePlan();
    const { cans } = reply.plan;
    return { ...reply, plan: { ...reply.plan, cans: { ...cans, fuel: cans.fuel + 1 } } };
  };

  it('is asked for what it has come to until there is something, which is shown as not proven', async () => {
    planner.want(asked());
    await quiet();
    await passes(2 * ASK_MS);
    expect(meanwhile.length).toBe(2);
    expect(new Set(meanwhile).size).toBe(1);
    expect(planner.read().reply).toBeNull();
    soFar = other();
    await passes(ASK_MS);
    expect(planner.read()).toMatchObject({ reply: soFar, of: asked(), searching: true, whole: false });
    await passes(10 * ASK_MS);
    expect(meanwhile.length).toBe(3);
  });

  it('says of the best plan whether it is another than the one that was shown first', async () => {
    for (const [first, outcome] of [
      [other(), 'changed'],
      [samplePlan(), 'confirmed'],
    ] as const) {
      soFar = first;
      const of = asked({ trip: { ...trip } });
      planner.want(of);
      await quiet();
      await passes(ASK_MS);
      expect(planner.read()).toMatchObject({ searching: true, outcome: null });
      await sent.at(-1)!.answer(samplePlan());
      expect(planner.read()).toMatchObject({ reply: samplePlan(), searching: false, outcome });
      await sent.at(-1)!.answer(samplePlan());
      expect(planner.read()).toMatchObject({ whole: true, outcome });
    }
  });

  it('says nothing of one that was there at once, nor of one for other figures', async () => {
    await made();
    expect(planner.read()).toMatchObject({ searching: false, outcome: null });
    planner.want(asked({ trip: { ...trip } }));
    await quiet();
    await sent.at(-1)!.answer(other());
    expect(planner.read().outcome).toBeNull();
    await passes(10 * ASK_MS);
    expect(meanwhile).toEqual([]);
  });

  it('says so where the same figures come to another plan with what takes long', async () => {
    planner.want(asked());
    await quiet();
    await sent.at(-1)!.answer(samplePlan());
    await sent.at(-1)!.answer(other());
    expect(planner.read()).toMatchObject({ whole: true, outcome: 'changed' });
  });

  it('is made again after a stop while only a good one is there', async () => {
    soFar = other();
    planner.want(asked());
    await quiet();
    await passes(ASK_MS);
    planner.stop();
    planner.again();
    await settle();
    expect(sent.map(({ extras }) => extras)).toEqual([false, false]);
  });
});

describe('a plan that is wanted', () => {
  it('is asked for after a pause, once for several changes, and first without what takes long', async () => {
    planner.want(asked());
    await passes(QUIET_MS - 1);
    const last = asked({ trip: { ...trip } });
    planner.want(last);
    await passes(QUIET_MS - 1);
    expect(sent).toEqual([]);
    await passes(1);
    expect(sent.map(({ path, extras }) => ({ path, extras }))).toEqual([
      { path: '/api/analyses/a/plan', extras: false },
    ]);
    await sent[0]!.answer(samplePlan());
    expect(planner.read()).toMatchObject({ of: last, whole: false });
    expect(sent.map(({ extras }) => extras)).toEqual([false, true]);
    await sent[1]!.answer(samplePlan());
    expect(planner.read()).toMatchObject({ of: last, whole: true, problem: null, slowSince: null });
    await passes(10_000);
    expect(sent.length).toBe(2);
  });

  it('is not asked for while nobody looks, and not twice', async () => {
    planner.want(null);
    await quiet();
    expect(sent).toEqual([]);
    await made();
    planner.want(null);
    planner.want(asked());
    await quiet();
    expect(sent.length).toBe(2);
  });

  it('calls off the request for what was wanted before, whose answer then counts for nothing', async () => {
    await made();
    const before = planner.read().reply;
    planner.want(asked({ rig: { ...rig } }));
    await quiet();
    const late = sent.at(-1)!;
    const last = asked({ rig: { ...rig } });
    planner.want(last);
    expect(late.signal.aborted).toBe(true);
    await late.answer({ ...samplePlan(), plan: { ...samplePlan().plan, status: 'none' } });
    expect(planner.read()).toMatchObject({ problem: null });
    expect(planner.read().reply).toBe(before);
    await quiet();
    await sent.at(-1)!.answer(samplePlan());
    expect(planner.read().of).toEqual(last);
  });

  it('is called off when nobody looks any more', async () => {
    planner.want(asked());
    await passes(QUIET_MS + SLOW_MS);
    expect(planner.read().slowSince).not.toBeNull();
    planner.want(null);
    expect(sent[0]!.signal.aborted).toBe(true);
    expect(planner.read()).toMatchObject({ slowSince: null, problem: null });
  });
});

describe('work that takes long', () => {
  it('is said to be at work since it began, through both steps, and no longer', async () => {
    planner.want(asked());
    await passes(QUIET_MS + SLOW_MS - 1);
    expect(planner.read().slowSince).toBeNull();
    await passes(1);
    expect(planner.read().slowSince).toBe(1_000_000 + QUIET_MS);
    await sent[0]!.answer(samplePlan());
    expect(planner.read().slowSince).toBe(1_000_000 + QUIET_MS);
    await sent[1]!.answer(samplePlan());
    expect(planner.read().slowSince).toBeNull();
  });

  it('can be stopped: the plan before stays, until it is told to go on', async () => {
    await made();
    const before = planner.read();
    const next = asked({ trip: { ...trip } });
    planner.want(next);
    await passes(QUIET_MS + SLOW_MS);
    planner.stop();
    expect(sent[2]!.signal.aborted).toBe(true);
    await settle();
    expect(planner.read()).toEqual({ ...before, stopped: next });
    // Looking away and back does not start it.
    planner.want(null);
    planner.want(next);
    await passes(10_000);
    expect(sent.length).toBe(3);
    planner.again();
    await settle();
    expect(planner.read().stopped).toBeNull();
    expect(sent.map(({ extras }) => extras)).toEqual([false, true, false, false]);
    await sent[3]!.answer(samplePlan());
    expect(planner.read().of).toEqual(next);
  });

  it('stopped after the plain plan goes on with what is left', async () => {
    planner.want(asked());
    await quiet();
    await sent[0]!.answer(samplePlan());
    planner.stop();
    expect(planner.read()).toMatchObject({ of: asked(), whole: false, stopped: asked() });
    planner.again();
    await settle();
    expect(sent.map(({ extras }) => extras)).toEqual([false, true, true]);
  });

  it('starts by itself for another wish', async () => {
    planner.want(asked());
    await quiet();
    planner.stop();
    planner.want(asked({ trip: { ...trip } }));
    expect(planner.read().stopped).toBeNull();
    await quiet();
    expect(sent.length).toBe(2);
  });

  it('does not mind being stopped when it is over', async () => {
    await made();
    planner.stop();
    expect(planner.read()).toMatchObject({ whole: true, stopped: null });
  });
});

describe('a plan that cannot be made', () => {
  it('leaves the last good one, and is tried again', async () => {
    await made();
    const { reply, of } = planner.read();
    planner.want(asked({ trip: { ...trip } }));
    await passes(QUIET_MS + SLOW_MS);
    await sent[2]!.refuse(422, 'trip-invalid');
    expect(planner.read()).toMatchObject({ whole: true, slowSince: null });
    expect(planner.read().problem?.code).toBe('trip-invalid');
    expect(planner.read().reply).toBe(reply);
    expect(planner.read().of).toBe(of);
    expect(lost).toBe(0);
    planner.again();
    await settle();
    expect(planner.read().problem).toBeNull();
    await sent[3]!.answer(samplePlan());
    expect(planner.read().reply).not.toBe(reply);
  });

  it('keeps the plain plan when the rest fails', async () => {
    planner.want(asked());
    await quiet();
    await sent[0]!.answer(samplePlan());
    await sent[1]!.drop();
    expect(planner.read()).toMatchObject({ of: asked(), whole: false, slowSince: null });
    expect(planner.read().problem?.code).toBe('no-answer');
  });

  it('has a plan in full made anew when asked, as where the time ran out', async () => {
    await made();
    planner.again();
    expect(planner.read()).toMatchObject({ whole: false, of: null });
    await settle();
    expect(sent.map(({ extras }) => extras)).toEqual([false, true, false]);
  });
});

describe('a route that the server no longer has', () => {
  const lose = async (of: Asked) => {
    planner.want(of);
    await quiet();
    await sent.at(-1)!.refuse(404, 'not-found');
  };

  it('is told once, and planned under its new id', async () => {
    await lose(asked());
    expect(lost).toBe(1);
    expect(planner.read().problem?.code).toBe('not-found');
    planner.want(asked({ id: 'b' }));
    expect(planner.read().problem).toBeNull();
    await quiet();
    expect(sent.at(-1)!.path).toBe('/api/analyses/b/plan');
  });

  it('is not sent again and again when it is lost again at once', async () => {
    await lose(asked());
    await lose(asked({ id: 'b' }));
    expect(lost).toBe(1);
    planner.again();
    await settle();
    await sent.at(-1)!.refuse(404, 'not-found');
    expect(lost).toBe(2);
    await lose(asked({ id: 'b', trip: { ...trip } }));
    expect(lost).toBe(3);
  });

  it('is sent again when it is lost once more after a plan', async () => {
    await lose(asked());
    await made(asked({ id: 'b' }));
    planner.again();
    await settle();
    await sent.at(-1)!.refuse(404, 'not-found');
    expect(lost).toBe(2);
    await made(asked({ id: 'c' }));
    await lose(asked({ id: 'd' }));
    expect(lost).toBe(3);
  });

  it('has nothing left of a route once another is open, nor any request on its way', async () => {
    planner.want(asked());
    await quiet();
    await sent[0]!.answer(samplePlan());
    planner.forget();
    expect(planner.read()).toMatchObject({ reply: null, of: null, whole: false, problem: null });
    expect(sent.at(-1)!.signal.aborted).toBe(true);
    planner.want(asked());
    await quiet();
    expect(sent.at(-1)!.extras).toBe(false);
  });
});
