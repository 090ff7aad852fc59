import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import type { NamedRig, RigsAndTrip } from '../../app/compare/compare.ts';
import { fitRig, fitTrip } from '../../app/input/plan-input.ts';
import { CompareRequest, Comparison } from '../../contract/answers/compare.ts';
import { InputProblem } from '../../core/input/problem.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { KeptTrip } from '../request/plan-body.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

/** Several rigs on what was read before. */
export function compareRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/analyses/:id/compare',
      {
        schema: {
          summary: 'Compare rigs on what was read before; "demo" is the demo',
          params: KeptTrip,
          body: CompareRequest,
          response: { 200: Comparison, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ body, params }, reply) => {
        return sendBytes(reply, await service.compare(params.id, fitRigs(body), goneSignal(reply)));
      },
    );
  };
}

/** The rigs, each named by its number from 1, and the trip, which must fit every one of them. */
function fitRigs({ rigs, trip }: CompareRequest): RigsAndTrip {
  const named = rigs.map((rig, index): NamedRig => {
    const fallback = `rig ${index + 1}`;
    return { rig: valueOrThrow(fitRig(rig, fallback)), fallback };
  });
  if (trip === undefined) return { rigs: named, trip: {} };
  for (const { rig, fallback } of named) {
    const outcome = fitTrip(trip, 'trip', rig);
    if (outcome.ok) continue;
    const { problem } = outcome;
    throw new InputProblem({ ...problem, came: `${problem.came} with ${fallback}` });
  }
  return { rigs: named, trip };
}
