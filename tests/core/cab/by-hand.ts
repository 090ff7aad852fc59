import type { CabRuns } from '../../../server/core/cab/cab-runs.ts';

/**
 * From Ketta to Aldhaven, 100 km, a litre for ten of them, 10 l in reserve either way; 20 l aboard on leaving. `backL`: what
 * the way back takes from the end, null where it cannot be driven.
 */
export function byHandWith(backL: number | null): CabRuns {
  const edge = (kind: 'start' | 'passing', name: string, atM: number) => ({
    kind,
    id: `node/${name}`,
    name,
    atM,
    detourM: 0,
    evidence: null,
  });
  const run = {
    from: edge('start', 'Ketta', 0),
    to: edge('passing', 'Aldhaven', 100_000),
    departL: 20,
    marginL: 0,
    arriveL: 10,
    unfitL: 0,
    keepL: 10,
    keepBackL: 10,
    lastHaltsL: 0,
    points: [
      { atM: 0, litres: 20, backL: backL === null ? null : 0 },
      { atM: 100_000, litres: 10, backL },
    ] as const,
    uncovered: [],
    sketchy: [],
    closed: [],
    onward: { m: 0, hours: 0 },
  };
  const side = { planned: [run], over: [] };
  return { fuel: side, water: side };
}
