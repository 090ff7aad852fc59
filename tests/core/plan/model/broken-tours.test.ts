import { expect, it } from 'vitest';
import { pathOf } from '../../../../server/core/plan/legs/leg.ts';
import { brokenTours } from '../../../../server/core/plan/model/broken-tours.ts';
import { carryModel } from '../../../../server/core/plan/model/model.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

it('rules out a leg over supplies that give little with the halt that breaks it, and no leg over other supplies', () => {
  // The pump at km 100 fills 10 l again: just enough for the 200 km on, but not after a detour for water before it, which
  // the way to the pump by itself bears. The one at km 120 gives more than is wanted.
  const question = questionOf(
    bareRoute({
      lengthKm: 300,
      stops: [
        bareStop(50, { offers: 'water', detourKm: 5 }),
        bareStop(100, { mostL: { fuel: 10 } }),
        bareStop(120, { mostL: { fuel: 12 } }),
      ],
    }),
  );
  const model = carryModel(question);
  const tours = model.legs.fuel.filter(({ leg }) => leg.hops.length > 1);
  const chosen = tours.find(({ leg }) => pathOf(leg) === '0 1 3');
  expect(tours.map(({ leg }) => pathOf(leg))).toContain('0 2 3');
  const values = new Float64Array(model.mip.columns.length);
  const toWaterAndOn = model.legs.water.filter(({ leg }) => leg.hops[0].to - leg.hops[0].from === 1);
  for (const { column } of toWaterAndOn) values[column] = 1;
  expect(brokenTours(question, model, values)).toEqual([]);
  values[chosen?.column ?? -1] = 1;
  const [row, ...others] = brokenTours(question, model, values);
  expect(others).toEqual([]);
  const ruledOut = tours.filter(({ column }) => row?.entries.some(([of]) => of === column));
  expect(ruledOut.map(({ leg }) => pathOf(leg))).toEqual(['0 1 3']);
  const [halt] = model.halts.all;
  expect(row?.entries).toEqual([
    [chosen?.column, 1],
    [halt?.column, 1],
  ]);
  expect(row?.upper).toBe(1);
});
