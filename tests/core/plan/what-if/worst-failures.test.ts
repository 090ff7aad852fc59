import { describe, expect, it } from 'vitest';
import { gaugeOf } from '../../../../server/core/plan/gauge/gauge-of.ts';
import type { CarrySide } from '../../../../server/core/plan/side/carry-side.ts';
import { stopFailures } from '../../../../server/core/plan/what-if/stop-fails.ts';
import { MOST_WITHOUT_PLAN, worstFailures } from '../../../../server/core/plan/what-if/worst-failures.ts';
import { courseOf, endEdge, startEdge } from '../../../helpers/course.ts';
import { basisFrom, stopAt } from './small-basis.ts';

const side = (commodity: 'fuel' | 'water', stops: number): CarrySide => {
  const lengthM = (stops + 1) * 55_000;
  const course = courseOf({ commodity, lengthM });
  // Farther apart the farther on.
  const edges = Array.from({ length: stops }, (_, index) =>
    stopAt(5 * index + (50 * (index + 1) ** 2) / stops, 0),
  );
  return {
    commodity,
    course,
    edges: [startEdge, ...edges, endEdge(lengthM)],
    startL: course.rig[commodity].drawableL,
    cansAtStart: true,
    canL: course.rig[commodity].canL,
    cansDrinkable: true,
    mostCans: 4,
  };
};

const basisWith = (stops: number) =>
  basisFrom({ fuel: side('fuel', stops), water: side('water', 0) }, () => 0);

describe('without a plan', () => {
  const STOPS = 70;
  const many = { ...basisWith(STOPS), kind: 'gaps' as const };

  it('of many stops that may fail the worst are told, in route order', () => {
    const every = stopFailures(many);
    expect(every).toHaveLength(STOPS);
    const told = worstFailures(many, every);
    expect(told).toHaveLength(MOST_WITHOUT_PLAN);
    const margins = every.map(({ row }) => row.marginL).sort((a, b) => a - b);
    expect(Math.max(...told.map(({ row }) => row.marginL))).toBeLessThanOrEqual(margins[MOST_WITHOUT_PLAN]!);
    const places = told.map(({ row }) => row.atM!);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('many stops have no lines of their own in the gauge table, few have', () => {
    const kinds = (basis: typeof many) => new Set(gaugeOf(basis, []).rows.map(({ at }) => at));
    expect(kinds(many)).toEqual(new Set(['start', 'step', 'end']));
    const few = { ...basisWith(10), kind: 'gaps' as const };
    expect(kinds(few)).toEqual(new Set(['start', 'step', 'arriving', 'leaving', 'end']));
  });

  it('all are told where they are few, and of a plan however many', () => {
    const few = { ...basisWith(10), kind: 'gaps' as const };
    expect(worstFailures(few, stopFailures(few))).toHaveLength(10);
    const plan = { ...many, kind: 'plan' as const };
    expect(worstFailures(plan, stopFailures(plan))).toHaveLength(STOPS);
  });
});
