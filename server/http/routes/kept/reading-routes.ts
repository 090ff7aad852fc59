import { Readable } from 'node:stream';
import { setTimeout as timePassed } from 'node:timers/promises';
import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { ExtractReadings } from '../../../contract/supplies/readings.ts';
import { foundOrThrow } from '../../reply/not-kept.ts';
import { goneSignal } from '../../reply/reply.ts';
import { PROBLEMS } from '../../reply/trip-reply.ts';
import type { ExtractKeeper } from '../../service/extract-keeper.ts';
import type { ExtractRoutesOptions } from './options.ts';

/** Between two looks at how readings go on, ms. */
const LOOK_MS = 200;
/** After so many looks without news a line goes out, so that nobody between takes the connection for dead. */
const QUIET_LOOKS = 75;

const ReadingId = Type.Object({ id: Type.String({ examples: ['6f1c2b1e-5f4e-4d55-9d0c-3b1f6a0e2a11'] }) });

const EVENTS = {
  summary: 'How the extracts that are on their way go on, as server-sent events',
  description:
    'An event "readings" at once and at each change; its data is as described. The stream ends when nothing is on its way any more: a browser then asks again by itself.',
  response: {
    200: { content: { 'text/event-stream': { schema: Type.Unsafe<Readable>(ExtractReadings) } } },
    ...PROBLEMS,
  },
};
const CALL_OFF = {
  summary: 'Call off an extract that is on its way; nothing of it is kept',
  params: ReadingId,
  response: { 204: Type.Null(), ...PROBLEMS },
};

/** Extracts that are on their way. */
export function readingRoutes({ keeper }: ExtractRoutesOptions): FastifyPluginAsyncTypebox {
  return async (app) => {
    const closing = new AbortController();
    app.addHook('preClose', async () => closing.abort());

    app.get('/api/extracts/readings', { schema: EVENTS }, async (_request, reply) => {
      const signal = AbortSignal.any([goneSignal(reply), closing.signal]);
      return reply
        .type('text/event-stream; charset=utf-8')
        .header('cache-control', 'no-store')
        .send(Readable.from(eventsOf(keeper, signal)));
    });

    app.delete('/api/extracts/readings/:id', { schema: CALL_OFF }, async ({ params }, reply) => {
      foundOrThrow(keeper.callOff(params.id) || null, 'reading');
      return reply.code(204).send(null);
    });
  };
}

/** The text of the events (HTML, server-sent events), until nothing is on its way or `signal` ends them. */
async function* eventsOf(keeper: ExtractKeeper, signal: AbortSignal): AsyncGenerator<string> {
  yield 'retry: 1000\n\n';
  let before = '';
  let quiet = 0;
  for (;;) {
    const { reading } = keeper;
    const text = JSON.stringify({ reading });
    quiet = text === before ? quiet + 1 : 0;
    if (text !== before) yield `event: readings\ndata: ${text}\n\n`;
    else if (quiet % QUIET_LOOKS === 0) yield ': nothing new\n\n';
    before = text;
    if (reading.length === 0 || signal.aborted) return;
    await timePassed(LOOK_MS, undefined, { signal }).catch(() => {});
  }
}
