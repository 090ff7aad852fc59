import type { FastifyError, FastifyInstance } from 'fastify';
import { InputProblem, type Problem, type ProblemCode } from '../core/input/problem.ts';
import { JobAborted } from '../work/pool.ts';
import { sendProblem } from './problem-reply.ts';

const problemOf = (code: ProblemCode, came: string, expected: string, remedy: string): Problem => ({
  code,
  source: null,
  place: null,
  came,
  expected,
  remedy,
});

export const internalProblem = problemOf(
  'internal',
  'a fault of the program',
  'an answer',
  'Try again; if it comes again, report it with what is on the terminal of the server',
);

/** Every failure leaves in the form of RFC 9457; what is no input's fault goes to `onFault` and not to the client. */
export function handleErrors(app: FastifyInstance, onFault: (text: string) => void): void {
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    // The client has gone: nobody reads the answer.
    if (error instanceof JobAborted) return reply.code(499).send();
    const problem = error instanceof InputProblem ? error.problem : problemOfFramework(error);
    if (problem === null) onFault(error.stack ?? error.message);
    return sendProblem(reply, problem ?? internalProblem);
  });
  app.setNotFoundHandler((request, reply) =>
    sendProblem(
      reply,
      problemOf(
        'not-found',
        `${request.method} ${request.url.slice(0, 200)}`,
        'an address that this server knows',
        'See /api/docs for the addresses',
      ),
    ),
  );
}

/** Refusals that fastify or a plugin made of a request; null for anything else. */
function problemOfFramework(error: FastifyError): Problem | null {
  const status = error.statusCode ?? 500;
  if (status === 413) {
    return problemOf(
      'too-large',
      lowered(error.message),
      'less',
      'Send smaller files: cut the extract to the area',
    );
  }
  if (status === 429) {
    return problemOf('too-many-requests', lowered(error.message), 'fewer', 'Wait a minute and try again');
  }
  if (status >= 400 && status < 500) {
    return problemOf(
      'request-invalid',
      lowered(error.message),
      'a request as in /api/docs',
      'Correct the request',
    );
  }
  return null;
}

const lowered = (text: string) => {
  const line = text.replace(/\s+/g, ' ').replace(/[.;]+$/, '');
  return line.charAt(0).toLowerCase() + line.slice(1);
};
