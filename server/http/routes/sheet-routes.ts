import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { fitPlan } from '../../app/input/plan-input.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { KeptTrip, PaperQuery, PlanBody } from '../request/plan-body.ts';
import { unitsAsked } from '../request/units-asked.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

/** The sheet of a trip as it is printed. */
export function sheetRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/analyses/:id/sheet',
      {
        schema: {
          summary: 'The sheet to print, as HTML, on what was read before; "demo" is the demo',
          description:
            'The carry plan on paper: answer, small map, strip, stops, gauge, days, what is not borne, list to check, and a page for somebody at home; black on white. The page needs nothing else and runs nothing. Closing the connection stops the work.',
          params: KeptTrip,
          querystring: PaperQuery,
          body: PlanBody,
          response: { 200: Type.String(), '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ body, params, query: { paper = 'a4', units } }, reply) => {
        const plan = valueOrThrow(fitPlan(body.rig, body.trip));
        const ask = { ...plan, format: 'sheet' as const, paper, units: unitsAsked(units) };
        const page = await service.exportFile(params.id, ask, goneSignal(reply));
        return sendBytes(reply, page, 'text/html; charset=utf-8');
      },
    );
  };
}
