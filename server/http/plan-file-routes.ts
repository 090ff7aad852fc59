import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { checkRigValue, checkTripValue } from '../app/plan-input.ts';
import { RigFile } from '../contract/rig.ts';
import { TripFile } from '../contract/trip.ts';
import { InputProblem, type Outcome } from '../core/input/problem.ts';
import { withLine } from '../io/yaml-file.ts';
import { MAX_YAML_BYTES, parseYaml } from '../io/yaml-text.ts';
import { ProblemReply } from './problem-reply.ts';
import { valueOrThrow } from './value-or-throw.ts';

const Text = Type.String({ description: 'The whole text of the file: YAML or JSON' });
const PROBLEMS = { '4xx': ProblemReply, '5xx': ProblemReply };

/** Reads rig and trip files for a page that edits them: the text comes in, the values go back as they were written. */
export const planFileRoutes: FastifyPluginAsyncTypebox = async (app) => {
  const options = { bodyLimit: MAX_YAML_BYTES };

  app.post(
    '/api/rig-files',
    {
      ...options,
      schema: {
        summary: 'Read a rig file and hold it against the schema; no default is filled in',
        consumes: ['text/plain'],
        body: Text,
        response: { 200: Type.Object({ rig: RigFile }), ...PROBLEMS },
      },
    },
    async ({ body }) => ({ rig: read(body, 'rig', (value) => checkRigValue(value, 'rig')) }),
  );

  app.post(
    '/api/trip-files',
    {
      ...options,
      schema: {
        summary: 'Read a trip file and hold it against the schema; no default is filled in',
        consumes: ['text/plain'],
        body: Text,
        response: { 200: Type.Object({ trip: TripFile }), ...PROBLEMS },
      },
    },
    // Whether it fits the rig is seen when both are reckoned with.
    async ({ body }) => ({ trip: read(body, 'trip', (value) => checkTripValue(value, 'trip', null)) }),
  );
};

/** The checked value of a file's text. Throws InputProblem, with the line of the key where there is one. */
function read<T>(body: unknown, source: 'rig' | 'trip', check: (value: unknown) => Outcome<T>): T {
  if (typeof body !== 'string') {
    throw new InputProblem({
      code: 'request-invalid',
      source: null,
      place: 'the request',
      came: 'no text',
      expected: `the text of a ${source} file as text/plain`,
      remedy: `Send the ${source} file's text`,
    });
  }
  const parsed = valueOrThrow(parseYaml(body, source));
  return valueOrThrow(withLine(check(parsed.value), parsed.lineOf));
}
