import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { KeptRig, RigList } from '../../../contract/kept.ts';
import { RigFile } from '../../../contract/rig.ts';
import type { Store } from '../../../store/library/store.ts';
import { notKept } from '../../reply/not-kept.ts';
import { ProblemReply } from '../../reply/problem-reply.ts';

const PROBLEMS = { '4xx': ProblemReply, '5xx': ProblemReply };
const RigName = Type.Object({
  name: Type.String({ minLength: 1, maxLength: 120, examples: ['Long-wheelbase wagon'] }),
});
const RigBody = Type.Object(
  { rig: RigFile },
  {
    additionalProperties: false,
    examples: [
      {
        rig: {
          fuel: { kind: 'diesel', litresPer100Km: 15, tanks: [{ name: 'main', litres: 130 }] },
          water: { litresPerDay: 14, tanks: [{ name: 'under floor', litres: 70 }] },
          pace: { hoursPerDay: 7, kmPerHour: 45 },
        },
      },
    ],
    'x-words': { expected: '{ "rig": … }', remedy: 'Send the rig as JSON' },
  },
);

/** Rigs that are kept by name, to be used on other trips. */
export function rigRoutes(store: Store): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.get(
      '/api/rigs',
      { schema: { summary: 'The rigs that are kept, by name', response: { 200: RigList, ...PROBLEMS } } },
      async () => ({ rigs: store.rigs() }),
    );

    app.put(
      '/api/rigs/:name',
      {
        schema: {
          summary: 'Keep a rig under a name, in place of the one that has it',
          params: RigName,
          body: RigBody,
          response: { 200: KeptRig, ...PROBLEMS },
        },
      },
      async ({ params, body }) => store.putRig(params.name, body.rig),
    );

    app.delete(
      '/api/rigs/:name',
      {
        schema: {
          summary: 'Keep a rig no longer',
          params: RigName,
          response: { 204: Type.Null(), ...PROBLEMS },
        },
      },
      async ({ params }, reply) => {
        if (!store.removeRig(params.name)) throw notKept('rig');
        return reply.code(204).send(null);
      },
    );
  };
}
