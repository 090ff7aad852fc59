import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import { checkRigValue, checkTripValue } from '../../app/input/plan-input.ts';
import type { FileKind } from '../../contract/file-kind.ts';
import { RigFile } from '../../contract/rig.ts';
import { TripFile } from '../../contract/trip.ts';
import type { Outcome } from '../../core/input/problem.ts';
import { withLine } from '../../io/yaml-file.ts';
import { MAX_YAML_BYTES, parseYaml } from '../../io/yaml-text.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';

const textOf = (kind: FileKind) =>
  Type.String({
    description: 'The whole text of the file: YAML or JSON',
    'x-words': {
      expected: `the text of a ${kind} file as text/plain`,
      remedy: `Send the ${kind} file's text`,
    },
  });
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
        body: textOf('rig'),
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
        body: textOf('trip'),
        response: { 200: Type.Object({ trip: TripFile }), ...PROBLEMS },
      },
    },
    // Whether it fits the rig is seen when both are reckoned with.
    async ({ body }) => ({ trip: read(body, 'trip', (value) => checkTripValue(value, 'trip', null)) }),
  );
};

/** The checked value of a file's text. Throws InputProblem, with the line of the key where there is one. */
function read<T>(text: string, source: FileKind, check: (value: unknown) => Outcome<T>): T {
  const file = valueOrThrow(parseYaml(text, source));
  return valueOrThrow(withLine(check(file.value), file.lineOf));
}
