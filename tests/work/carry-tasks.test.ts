import { describe, expect, it } from 'vitest';
import { loadTrip } from '../../server/app/load-trip.ts';
import { DEMO_EXTRACT, DEMO_ROUTE, readDemoPlan } from '../../server/io/demo-files.ts';
import { tripFileSet } from '../../server/io/trip-file-set.ts';
import { tasks } from '../../server/work/carry-tasks.ts';
import { packTrip } from '../../server/work/pack.ts';
import { PLAN_SECONDS } from '../helpers/patience.ts';

async function demoAsk() {
  const ask = { route: DEMO_ROUTE, extracts: [DEMO_EXTRACT], withGround: false, notice: null };
  const loaded = await loadTrip(ask, tripFileSet, {});
  const plan = await readDemoPlan();
  if (!loaded.ok || !plan.ok) throw new Error('the demo does not load');
  const { rig, trip } = plan.value;
  return {
    key: 'demo',
    packed: packTrip(loaded.value),
    rig,
    trip,
    today: '2026-05-01',
    seconds: PLAN_SECONDS,
    extras: true,
  };
}

describe('the planning task', () => {
  it('stops before the next solve once it is given up', { tags: 'slow' }, async () => {
    const ask = await demoAsk();
    const { signal } = new AbortController();
    let asked = 0;
    const whole = await tasks.planReply(
      ask,
      signal,
      () => {
        asked += 1;
        return false;
      },
      () => {},
    );
    expect(whole.ok).toBe(true);
    // Once for each solve.
    expect(asked).toBeGreaterThan(4);
    const solves = asked;
    asked = 0;
    const stopped = tasks.planReply(
      ask,
      signal,
      () => {
        asked += 1;
        return asked === 3;
      },
      () => {},
    );
    await expect(stopped).rejects.toThrow('given up');
    expect(asked).toBe(3);
    expect(asked).toBeLessThan(solves);
  });
});
