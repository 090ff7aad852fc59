import { setImmediate } from 'node:timers/promises';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { PlanReply } from '../../server/contract/whatif.ts';
import { demoApp } from './files/demo-app.ts';

const server = demoApp('2026-05-01');

const plan = (payload: object, id = 'demo') =>
  server.app.inject({ method: 'POST', url: `/api/analyses/${id}/plan`, payload });

describe('carry plan over HTTP', { tags: 'slow' }, () => {
  it('fits the contract, with and without its extras, and is the same each time', async () => {
    const { rig, trip } = server.demo.analysis;
    const more = { ...trip, plan: { mostCans: { fuel: 6, water: 12 } } };
    for (const extras of [true, false]) {
      const response = await plan({ rig, trip: more, extras });
      expect(response.statusCode).toBe(200);
      expect(Compile(PlanReply).Errors(response.json())).toEqual([]);
      expect(response.json<PlanReply>().plan.status).toBe('found');
      expect((await plan({ rig, trip: more, extras })).body).toBe(response.body);
    }
  });

  it('fills no more than there is at supplies of one’s own, and refuses one without a place by name', async () => {
    const { rig, trip } = server.demo.analysis;
    const laid = [{ name: 'North depot', commodity: 'water', litres: 60, atKm: 480 }];
    const { plan: made } = (await plan({ rig, trip: { ...trip, laid }, extras: false })).json<PlanReply>();
    const depot = made.sheet.find(({ water }) => water?.at.id === 'laid/water-480')!.water!;
    expect(depot).toMatchObject({ mostL: 60, contact: null });
    expect(depot.fillL).toBeGreaterThan(0);
    expect(depot.fillL).toBeLessThanOrEqual(60 + 1e-6);
    const wrong = await plan({ rig, trip: { ...trip, laid: [{ commodity: 'water', litres: 60 }] } });
    expect(wrong.statusCode).toBe(422);
    expect(wrong.json<{ detail: string }>().detail).toContain('laid');
  });

  it('goes by the gaps where there is no plan, and by what the trip asks of the what-ifs', async () => {
    const { rig, trip } = server.demo.analysis;
    const bare = {
      ...trip,
      plan: { mostCans: { fuel: 0, water: 0 } },
      whatIf: { waitDays: 1, turnRoundAtKm: 300 },
    };
    const { plan: made, whatIf, gauge } = (await plan({ rig, trip: bare, extras: false })).json<PlanReply>();
    expect(made.status).toBe('none');
    expect(whatIf.basis).toBe('gaps');
    expect(gauge.basis).toBe('gaps');
    expect(whatIf.rows.find(({ kind }) => kind === 'wait')!.text).toContain('1 day ');
    expect(whatIf.rows.filter(({ kind }) => kind === 'turn-round').map(({ atKm }) => atKm)).toEqual([
      300, 300,
    ]);
    const { gaps } = server.demo.analysis.water;
    const high = whatIf.rows.find(({ kind, commodity }) => kind === 'high-use' && commodity === 'water')!;
    const margins = gaps.map(({ marginL, grades }) => Math.min(marginL, grades?.drinking.marginL ?? marginL));
    expect(high.marginL).toBeCloseTo(Math.min(...margins), 6);
    const wrong = await plan({ rig, trip: { whatIf: { waitDays: -1 } } });
    expect(wrong.json()).toMatchObject({ code: 'trip-invalid' });
  });

  it('has more cans than are owned where they are too few, and tells what helps without them', async () => {
    // The plan needs four.
    const OWNED = 3;
    const { rig, trip } = server.demo.analysis;
    const fewer = { ...rig, water: { ...rig.water, cans: { ...rig.water.cans, owned: OWNED } } };
    const response = await plan({ rig: fewer, trip, extras: true });
    expect(Compile(PlanReply).Errors(response.json())).toEqual([]);
    const { plan: made } = response.json<PlanReply>();
    expect(made.status).toBe('found');
    expect(made.getCans.water).toBe(made.cans.water - OWNED);
    expect(made.getCans.water).toBeGreaterThan(0);
    expect(made.aims.every(({ proven }) => proven)).toBe(true);
    expect(made.restsOn.map(({ code }) => code)).toContain('plan-cans-to-get');
    expect(made.waysOutComplete).toBe(true);
    expect(made.waysOut.length).toBeGreaterThan(0);
    for (const { kind, cans } of made.waysOut) {
      expect(kind).not.toBe('more-cans');
      expect(cans.water).toBeLessThanOrEqual(OWNED);
    }
  });

  it('stops the work of a request that was given up, and answers the next one', async () => {
    const { rig, trip } = server.demo.analysis;
    const address = await server.app.listen({ host: '127.0.0.1', port: 0 });
    const send = (signal: AbortSignal | null) =>
      fetch(`${address}/api/analyses/demo/plan`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ rig, trip: { ...trip, plan: { mostCans: { fuel: 0, water: 0 } } } }),
        signal,
      });
    const untilPlanning = async (fits: (plans: number) => boolean) => {
      const planning = async () =>
        (await server.app.inject('/api/health')).json<{ planning: number }>().planning;
      while (!fits(await planning())) await setImmediate();
    };
    for (let edit = 0; edit < 3; edit += 1) {
      const control = new AbortController();
      const refused = expect(send(control.signal)).rejects.toThrow('abort');
      await untilPlanning((plans) => plans > 0);
      control.abort();
      await refused;
      await untilPlanning((plans) => plans === 0);
    }
    expect((await send(null)).status).toBe(200);
  });

  it('refuses unknown keys, no rig, a bad rig and a trip that is gone', async () => {
    const { rig } = server.demo.analysis;
    expect((await plan({ rig, wishes: 1 })).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({})).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({ rig, extras: 3 })).json()).toMatchObject({ code: 'request-invalid' });
    expect((await plan({ rig: { ...rig, fuel: 3 } })).json()).toMatchObject({ code: 'rig-invalid' });
    expect((await plan({ rig, trip: { plan: { mostCans: { fuel: -1 } } } })).json()).toMatchObject({
      code: 'trip-invalid',
    });
    expect((await plan({ rig }, 'none')).statusCode).toBe(404);
  });
});
