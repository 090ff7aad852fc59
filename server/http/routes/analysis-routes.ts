import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { fitPlan } from '../../app/input/plan-input.ts';
import { AnalysisReply } from '../../contract/answers/map.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { KeptTrip, PlanBody } from '../request/plan-body.ts';
import { streamed } from '../request/streamed.ts';
import { takeUpload } from '../request/upload.ts';
import type { AnalysisService } from '../service/analysis-service.ts';
import type { Limits } from '../service/limits.ts';

const binary = Type.String({ format: 'binary' });
const UploadForm = Type.Object({
  route: binary,
  extract: Type.Array(binary, { minItems: 1 }),
  rig: Type.String({ description: 'The rig as YAML or JSON: text or a file' }),
  trip: Type.Optional(Type.String({ description: 'The trip as YAML or JSON: text or a file' })),
});
const REPLIES = { 200: AnalysisReply, '4xx': ProblemReply, '5xx': ProblemReply };

/** Analyses of uploaded trips, again with another rig or trip, and of the demo. */
export function analysisRoutes(service: AnalysisService, limits: Limits): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.get(
      '/api/demo',
      { schema: { summary: 'The demo: an invented land, analysed', response: REPLIES } },
      async (_request, reply) => sendBytes(reply, await service.demo()),
    );

    app.post(
      '/api/analyses',
      {
        schema: {
          summary: 'Read a route and extracts, and analyse them',
          consumes: ['multipart/form-data'],
          body: streamed(UploadForm),
          response: REPLIES,
        },
      },
      async (request, reply) => {
        const upload = await takeUpload(request, limits);
        try {
          const signal = goneSignal(reply);
          const plan = await service.readPlan(upload, signal);
          return sendBytes(reply, await service.analyseUpload(upload, plan, signal));
        } finally {
          await upload.discard();
        }
      },
    );

    app.post(
      '/api/analyses/:id',
      {
        schema: {
          summary: 'Analyse what was read before with another rig or trip; "demo" is the demo',
          params: KeptTrip,
          body: PlanBody,
          response: REPLIES,
        },
      },
      async ({ body, params }, reply) => {
        const plan = valueOrThrow(fitPlan(body.rig, body.trip));
        return sendBytes(reply, await service.analyseAgain(params.id, plan, goneSignal(reply)));
      },
    );
  };
}
