import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { OverpassAsk, OverpassQuestion, WIDEST_CORRIDOR_KM } from '../../../contract/answers/overpass.ts';
import { KeptExtract } from '../../../contract/kept.ts';
import { CORRIDOR_KM } from '../../../core/defaults/trip-defaults.ts';
import { InputProblem } from '../../../core/input/problem.ts';
import { widened } from '../../../io/overpass/corridor.ts';
import { type Asking, questionOf } from '../../../io/overpass/question.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { goneSignal } from '../../reply/reply.ts';
import { PROBLEMS } from '../../reply/trip-reply.ts';
import { TripId } from '../../request/trip-id.ts';
import type { ExtractRoutesOptions } from './options.ts';

const QUESTION = {
  summary: "What an Overpass server would be asked for the corridor of a trip's route; nothing is sent",
  params: TripId,
  querystring: Type.Object(
    { corridorKm: Type.Optional(Type.String({ description: 'Kilometres on either side of the route' })) },
    { additionalProperties: false },
  ),
  response: { 200: OverpassQuestion, ...PROBLEMS },
};
const ASK = {
  summary:
    'Ask the server what was shown, and keep its answer as an extract; closing the connection calls it off',
  description:
    'Takes minutes: GET /api/extracts/readings tells how it goes on. What was answered before a stop is not asked for again.',
  params: TripId,
  body: OverpassAsk,
  response: { 201: KeptExtract, ...PROBLEMS },
};

/** Map data of a trip's corridor, asked of an Overpass server once a user has seen what will be asked. */
export function overpassRoutes(options: ExtractRoutesOptions): FastifyPluginAsyncTypebox {
  const { store, service, keeper, interpreter } = options;
  const askingOf = async (id: string, wanted: number | undefined): Promise<Asking> => {
    const trip = foundOrThrow(store.trip(id), 'trip');
    const corridorKm = wanted ?? trip.trip.corridorKm ?? CORRIDOR_KM;
    const boxes = await service.loader.boxesAlong(trip, corridorKm);
    return { interpreter, boxes: boxes.map(widened), corridorKm };
  };
  const question = (asking: Asking) => questionOf(asking, store.extracts.answersFolder);
  return async (app) => {
    app.get('/api/trips/:id/overpass', { schema: QUESTION }, async ({ params, query }) =>
      question(await askingOf(params.id, corridorIn(query.corridorKm))),
    );

    app.post('/api/trips/:id/overpass', { schema: ASK }, async ({ params, body }, reply) => {
      const gone = goneSignal(reply);
      const asking = await askingOf(params.id, body.corridorKm);
      if ((await question(asking)).digest !== body.digest) throw otherQuestion();
      const { boxes } = asking;
      const fileName = `corridor of ${foundOrThrow(store.trip(params.id), 'trip').route.fileName}`;
      const plan = { interpreter, boxes, name: body.name.trim(), fileName };
      return reply.code(201).send(await keeper.fetch(plan, gone));
    });
  };
}

/** A corridor's half width in an address. Throws InputProblem. */
function corridorIn(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const km = Number(text);
  if (km > 0 && km <= WIDEST_CORRIDOR_KM) return km;
  throw new InputProblem({
    code: 'request-invalid',
    place: 'corridorKm',
    came: `"${text.slice(0, 40)}"`,
    expected: `kilometres above 0 and at most ${WIDEST_CORRIDOR_KM}`,
    remedy: 'Ask for a narrower corridor',
  });
}

const otherQuestion = () =>
  new InputProblem({
    code: 'changed-elsewhere',
    place: '/digest',
    came: 'a question that is not the one that would be asked now',
    expected: 'the digest of what GET shows',
    remedy: 'Get the question again and look at it: nothing was sent',
  });
