import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import type { NamedRig } from '../app/compare.ts';
import { checkRigValue, checkTripValue } from '../app/plan-input.ts';
import { CompareRequest, Comparison, MAX_COMPARED } from '../contract/compare.ts';
import type { TripFile } from '../contract/trip.ts';
import { InputProblem } from '../core/input/problem.ts';
import type { AnalysisService } from './analysis-service.ts';
import { ProblemReply } from './problem-reply.ts';
import { goneSignal, sendBytes } from './reply.ts';
import { valueOrThrow } from './value-or-throw.ts';

/** Several rigs on what was read before. */
export function compareRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/analyses/:id/compare',
      {
        schema: {
          summary: 'Compare rigs on what was read before; "demo" is the demo',
          params: Type.Object({ id: Type.String() }),
          body: CompareRequest,
          response: { 200: Comparison, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async (request, reply) => {
        const { rigs, trip } = compareOf(request.body);
        return sendBytes(reply, await service.compare(request.params.id, rigs, trip, goneSignal(reply)));
      },
    );
  };
}

const invalid = (place: string, came: string, expected: string) =>
  new InputProblem({
    code: 'request-invalid',
    source: null,
    place,
    came,
    expected,
    remedy: 'Send { "rigs": [ … ], "trip": … } as JSON; the trip may be left out',
  });

/** The rigs and the trip of a JSON body. A rig is named by its number from 1; the trip must fit every one of them. */
function compareOf(body: unknown): { rigs: NamedRig[]; trip: TripFile } {
  const given = typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {};
  const unknown = Object.keys(given).find((key) => key !== 'rigs' && key !== 'trip');
  if (unknown !== undefined) throw invalid(`/${unknown.slice(0, 40)}`, 'an unknown key', 'rigs and trip');
  if (!Array.isArray(given.rigs)) {
    throw invalid(
      '/rigs',
      given.rigs === undefined ? 'no rigs' : 'something that is no list',
      'a list of rigs',
    );
  }
  const { length } = given.rigs;
  if (length < 1 || length > MAX_COMPARED) {
    throw invalid('/rigs', `a list of ${length}`, `1 to ${MAX_COMPARED} rigs`);
  }
  const rigs = given.rigs.map((rig, index): NamedRig => {
    const fallback = `rig ${index + 1}`;
    return { rig: valueOrThrow(checkRigValue(rig, fallback)), fallback };
  });
  if (given.trip === undefined) return { rigs, trip: {} };
  const trips = rigs.map(({ rig, fallback }) => {
    const outcome = checkTripValue(given.trip, 'trip', rig);
    if (outcome.ok) return outcome.value;
    const { problem } = outcome;
    throw new InputProblem({ ...problem, came: `${problem.came} with ${fallback}` });
  });
  return { rigs, trip: trips[0]! };
}
