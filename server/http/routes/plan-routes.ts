import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import { fitPlan } from '../../app/input/plan-input.ts';
import { PlanReply } from '../../contract/whatif.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { CarryBody, KeptTrip } from '../request/plan-body.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

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
          params: KeptTrip,
          body: CarryBody,
          response: { 200: PlanReply, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ body, params }, reply) => {
        const { rig, trip } = valueOrThrow(fitPlan(body.rig, body.trip));
        const ask = { rig, trip, extras: body.extras ?? true };
        return sendBytes(reply, await service.plan(params.id, ask, goneSignal(reply)));
      },
    );
  };
}
