import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { checkRigValue, checkTripValue } from '../app/plan-input.ts';
import { RigFile } from '../contract/rig.ts';
import { TripFile } from '../contract/trip.ts';
import { PlanReply } from '../contract/whatif.ts';
import { InputProblem } from '../core/input/problem.ts';
import type { AnalysisService, PlanRequest } from './analysis-service.ts';
import { ProblemReply } from './problem-reply.ts';
import { goneSignal, sendBytes } from './reply.ts';
import { valueOrThrow } from './value-or-throw.ts';

const KEYS = ['rig', 'trip', 'extras'];

/** The carry plan of what was read before. */
export function planRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/analyses/:id/plan',
      {
        schema: {
          summary: 'Plan where to fill and what to carry, on what was read before; "demo" is the demo',
          description:
            'With what happens when something goes wrong, and the gauge table; the key whatIf of the trip chooses for them. Closing the connection stops the work. Where the owned cans are too few, and the trip sets no limit, the plan has the fewest more that it takes. Without extras there are no ways out and no plan against one failure.',
          params: Type.Object({ id: Type.String() }),
          body: Type.Object({
            rig: RigFile,
            trip: Type.Optional(TripFile),
            extras: Type.Optional(Type.Boolean({ default: true })),
          }),
          response: { 200: PlanReply, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async (request, reply) =>
        sendBytes(reply, await service.plan(request.params.id, askOf(request.body), goneSignal(reply))),
    );
  };
}

function askOf(body: unknown): PlanRequest {
  const given = typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {};
  const invalid = (place: string, came: string) =>
    new InputProblem({
      code: 'request-invalid',
      source: null,
      place,
      came,
      expected: '{ "rig": …, "trip": …, "extras": true or false }',
      remedy: 'Send the rig and, if there is one, the trip as JSON',
    });
  const unknown = Object.keys(given).find((key) => !KEYS.includes(key));
  if (unknown !== undefined) throw invalid(`/${unknown.slice(0, 40)}`, 'an unknown key');
  if (given.rig === undefined) throw invalid('/rig', 'no rig');
  if (given.extras !== undefined && typeof given.extras !== 'boolean')
    throw invalid('/extras', 'something that is neither true nor false');
  const rig = valueOrThrow(checkRigValue(given.rig, 'rig'));
  const trip = given.trip === undefined ? {} : valueOrThrow(checkTripValue(given.trip, 'trip', rig));
  return { rig, trip, extras: given.extras ?? true };
}
