import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify';
import { InputProblem, type Problem, problemOf } from '../../core/input/problem.ts';
import { asDiskProblem } from '../../store/extracts/disk-problem.ts';
import { JobAborted } from '../../work/job.ts';
import { sendProblem } from './problem-reply.ts';

const internalProblem = problemOf({
  code: 'internal',
  came: 'a fault of the program',
  expected: 'an answer',
  remedy: 'Try again; if it comes again, report it with what is on the terminal of the server',
});

/** Every failure leaves in the form of RFC 9457; what is no input's fault goes to `onFault` and not to the client. */
export function handleErrors(app: FastifyInstance, onFault: (text: string) => void): void {
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    // The client has gone: nobody reads the answer.
    if (error instanceof JobAborted) return reply.code(499).send();
    const known = asDiskProblem(error);
    const problem = known instanceof InputProblem ? known.problem : problemOfFramework(error);
    if (problem === null) onFault(error.stack ?? error.message);
    return sendProblem(reply, problem ?? internalProblem);
  });
  app.setNotFoundHandler((request, reply) =>
    sendProblem(
      reply,
      problemOf({
        code: 'not-found',
        came: `${request.method} ${request.url.slice(0, 200)}`,
        expected: 'an address that this server knows',
        remedy: 'See /api/docs for the addresses',
      }),
    ),
  );
}

/** Of replies to addresses that cannot be read: they come before all that sets headers. */
const BARE_HEADERS = {
  'content-security-policy': "default-src 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-store',
} as const;

/** An address that cannot be read, such as one with half a sign in it. */
export function refuseAddress(_error: FastifyError, _request: unknown, reply: FastifyReply): void {
  void sendProblem(
    reply.headers(BARE_HEADERS),
    problemOf({
      code: 'request-invalid',
      came: 'an address that cannot be read',
      expected: 'one as in /api/docs',
      remedy: 'Correct the address',
    }),
  );
}

/** Refusals that fastify or a plugin made of a request; null for anything else. */
function problemOfFramework(error: FastifyError): Problem | null {
  const status = error.statusCode ?? 500;
  const came = lowered(error.message);
  if (status === 413) {
    const remedy = 'Send smaller files: cut the extract to the area';
    return problemOf({ code: 'too-large', came, expected: 'less', remedy });
  }
  if (status === 429) {
    return problemOf({
      code: 'too-many-requests',
      came,
      expected: 'fewer',
      remedy: 'Wait a minute and try again',
    });
  }
  if (status >= 400 && status < 500) {
    const expected = 'a request as in /api/docs';
    return problemOf({ code: 'request-invalid', came, expected, remedy: 'Correct the request' });
  }
  return null;
}

const lowered = (text: string) => {
  const line = text.replace(/\s+/g, ' ').replace(/[.;]+$/, '');
  return line.charAt(0).toLowerCase() + line.slice(1);
};
