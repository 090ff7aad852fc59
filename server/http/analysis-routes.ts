import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { checkRigValue, checkTripValue } from '../app/plan-input.ts';
import { AnalysisReply } from '../contract/map.ts';
import { RigFile } from '../contract/rig.ts';
import { TripFile } from '../contract/trip.ts';
import { InputProblem } from '../core/input/problem.ts';
import { parseRig } from '../io/rig-file.ts';
import { parseTrip } from '../io/trip-file.ts';
import type { AnalysisService } from './analysis-service.ts';
import type { Limits } from './limits.ts';
import { ProblemReply } from './problem-reply.ts';
import { goneSignal, sendBytes } from './reply.ts';
import { takeUpload } from './upload.ts';
import { valueOrThrow } from './value-or-throw.ts';

const binary = Type.String({ format: 'binary' });
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
          body: Type.Object({
            route: binary,
            extract: Type.Array(binary, { minItems: 1 }),
            rig: Type.String({ description: 'The rig as YAML or JSON: text or a file' }),
            trip: Type.Optional(Type.String({ description: 'The trip as YAML or JSON: text or a file' })),
          }),
          response: REPLIES,
        },
      },
      async (request, reply) => {
        const upload = await takeUpload(request, limits);
        try {
          const rig = valueOrThrow(parseRig(upload.rig, 'rig'));
          const trip = upload.trip === null ? {} : valueOrThrow(parseTrip(upload.trip, 'trip', rig));
          return sendBytes(reply, await service.analyseUpload(upload, rig, trip, goneSignal(reply)));
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
          params: Type.Object({ id: Type.String() }),
          body: Type.Object({ rig: RigFile, trip: Type.Optional(TripFile) }),
          response: REPLIES,
        },
      },
      async (request, reply) => {
        const { rig, trip } = planOf(request.body);
        return sendBytes(reply, await service.analyseAgain(request.params.id, rig, trip, goneSignal(reply)));
      },
    );
  };
}

/** The rig and trip of a JSON body, each held against its schema so that a refusal's place is the key in it. */
function planOf(body: unknown): { rig: RigFile; trip: TripFile } {
  const given = typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {};
  const unknown = Object.keys(given).find((key) => key !== 'rig' && key !== 'trip');
  if (unknown !== undefined || given.rig === undefined) {
    throw new InputProblem({
      code: 'request-invalid',
      source: null,
      place: unknown === undefined ? '/rig' : `/${unknown.slice(0, 40)}`,
      came: unknown === undefined ? 'no rig' : 'an unknown key',
      expected: '{ "rig": …, "trip": … }',
      remedy: 'Send the rig and, if there is one, the trip as JSON',
    });
  }
  const rig = valueOrThrow(checkRigValue(given.rig, 'rig'));
  return { rig, trip: given.trip === undefined ? {} : valueOrThrow(checkTripValue(given.trip, 'trip', rig)) };
}
