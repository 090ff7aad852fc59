import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { fitPlan } from '../../app/input/plan-input.ts';
import type { ExportEnding } from '../../app/take-along/export-file.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { goneSignal, sendBytes } from '../reply/reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';
import { PaperQuery, PlanBody } from '../request/plan-body.ts';
import { unitsAsked } from '../request/units-asked.ts';
import type { AnalysisService } from '../service/analysis-service.ts';

const TYPES: Record<ExportEnding, string> = {
  html: 'text/html; charset=utf-8',
  pdf: 'application/pdf',
  gpx: 'application/gpx+xml; charset=utf-8',
  geojson: 'application/geo+json; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  ics: 'text/calendar; charset=utf-8',
};

const FORMATS = Object.keys(TYPES) as ExportEnding[];

const Format = Type.Union(FORMATS.map((format) => Type.Literal(format)));

/** The carry plan as a file to take along. */
export function takeAlongRoutes(service: AnalysisService): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/analyses/:id/files/:format',
      {
        schema: {
          summary: 'The carry plan of what was read before as a file to take along; "demo" is the demo',
          description:
            'The same files as of the command export. html is one file for a telephone, which works offline and says from where one is and what is aboard whether to go on or back; pdf is the sheet, on the paper that is asked for. Closing the connection stops the work.',
          params: Type.Object({ id: Type.String(), format: Format }),
          querystring: PaperQuery,
          body: PlanBody,
          response: { 200: Type.String(), '4xx': ProblemReply, '5xx': ProblemReply },
        },
      },
      async ({ body, params: { id, format }, query: { paper = 'a4', units } }, reply) => {
        const plan = valueOrThrow(fitPlan(body.rig, body.trip));
        const bytes = await service.exportFile(
          id,
          { ...plan, format, paper, units: unitsAsked(units) },
          goneSignal(reply),
        );
        reply.header('content-disposition', `attachment; filename="drystage.${format}"`);
        return sendBytes(reply, bytes, TYPES[format]);
      },
    );
  };
}
