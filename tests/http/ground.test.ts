import { readFile } from 'node:fs/promises';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { buildApp } from '../../server/http/app.ts';
import { GROUND_TRAPS, groundOf, suppliesOf } from '../traps/ground.ts';
import { FAR_SUPPLIES, FRESH, isCalm, osmXml, StraightRoute, straightMap } from '../traps/straight-route.ts';
import { formOf } from './form.ts';

let app: FastifyInstance;
let straight: StraightRoute;
beforeAll(async () => {
  app = await buildApp({
    today: () => FRESH.slice(0, 10),
    webFolder: '/nowhere',
    onFault: (text) => {
      throw new Error(text);
    },
    limits: { keptTrips: 2, fileBytes: 3_000_000, requestBytes: 4_000_000, extracts: 2 },
  });
  straight = await StraightRoute.open();
});
afterAll(async () => {
  await app.close();
  await straight.close();
});

const VERSION = { version: 1, timestamp: FRESH };
const MIDDLE_KM = 600;

/** The map of the straight route with one trap of the ground in its middle, posted as a page does. */
async function answerTo(name: string) {
  const trap = GROUND_TRAPS.find((one) => one.name === name);
  if (trap === undefined) throw new Error(`no trap is called ${name}`);
  const more = [
    ...FAR_SUPPLIES,
    ...suppliesOf(trap, 0, MIDDLE_KM, VERSION),
    ...groundOf(trap, 0, MIDDLE_KM, VERSION),
  ];
  const reply = await app.inject({
    method: 'POST',
    url: '/api/analyses',
    ...formOf([
      { name: 'route', file: 'route.gpx', bytes: await readFile(straight.path('route.gpx')) },
      {
        name: 'extract',
        file: 'map.osm',
        bytes: osmXml({ objects: straightMap({ fuel: null, water: null, more }) }),
      },
      { name: 'rig', text: await readFile(straight.path('rig.yaml'), 'utf8') },
      {
        name: 'trip',
        text: JSON.stringify({
          aboard: { fuelKmSinceFill: 0, waterDaysSinceFill: 0 },
          onward: { km: 0, hours: 0 },
          allowancePercent: 0,
        }),
      },
    ]),
  });
  expect(reply.statusCode).toBe(200);
  return reply.json<AnalysisReply>();
}

it('tells over HTTP what lies between a route and a supply, and what a long detour comes to', {
  tags: 'slow',
}, async () => {
  const across = await answerTo('across a river');
  const barred = across.analysis.passings.find(({ commodity }) => commodity === 'fuel');
  expect(barred).toMatchObject({ evidence: 'doubtful', counts: false });
  expect(barred?.reasons[0]).toMatchObject({
    code: 'no-way-across',
    text: expect.stringContaining('a river (Long River) between it and the route'),
  });
  expect([isCalm(across.analysis, 'fuel'), isCalm(across.analysis, 'water')]).toEqual([false, false]);
  // The same trip again, as the page asks at every keystroke: the ground is still known.
  const { rig, trip } = across.analysis;
  const again = await app.inject({
    method: 'POST',
    url: `/api/analyses/${across.id}`,
    payload: { rig, trip: { ...trip, detourFactor: 1.4 } },
  });
  expect(again.json<AnalysisReply>().analysis.passings[0]?.counts).toBe(false);

  const bridged = await answerTo('a bridge near');
  expect([isCalm(bridged.analysis, 'fuel'), isCalm(bridged.analysis, 'water')]).toEqual([true, true]);
  const [, , detour] = bridged.analysis.answer.fuel;
  expect(detour?.[0]).toBe('Rests on detours of over ');
  const kilometres = detour?.flatMap((part) =>
    typeof part === 'object' && 'as' in part && part.as === 'much' ? [part] : [],
  );
  expect(kilometres).toEqual([
    { quantity: 1, unit: 'km', as: 'much' },
    { quantity: expect.closeTo(1.3, 1), unit: 'km', as: 'much' },
  ]);
});
