import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { fitPlan } from '../../app/input/plan-input.ts';
import { PlanReply } from '../../contract/whatif.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { CarryBody, KeptTrip, PlanName } from '../request/plan-body.ts';
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
            'With what happens when something goes wrong, and the gauge table; the key whatIf of the trip chooses for them. Closing the connection stops the work. Where the owned cans are too few, and the trip sets no limit, the plan has the fewest more that it takes. Without extras there are no ways out and no plan against one failure. With a name of 16 or more letters, digits and hyphens, chosen at random, a good plan can be asked for under that name while the best takes long.',
          params: KeptTrip,
          body: CarryBody,
          response: { 200: PlanReply, '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ body, params }, reply) => {
        const { rig, trip } = valueOrThrow(fitPlan(body.rig, body.trip));
        const ask = { rig, trip, extras: body.extras ?? true, name: body.name ?? null };
        return sendBytes(reply, await service.plan(params.id, ask, goneSignal(reply)));
      },
    );

    app.get(
      '/api/plans/:name',
      {
        schema: {
          summary: 'A good plan, while the best one is still searched for',
          description:
            'Of a plan that is being made under that name: one that keeps the reserve and the limits, found before it is known whether there is a better one; 204 while there is none. Nothing is kept of it once the plan itself was sent.',
          params: Type.Object({ name: PlanName }),
          response: { 200: PlanReply, 204: Type.Null(), '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ params }, reply) => {
        const soFar = service.planSoFar(params.name);
        return soFar === null ? reply.code(204).send(null) : sendBytes(reply, soFar);
      },
    );
  };
}
