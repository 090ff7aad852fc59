import fastify, { type FastifyInstance } from 'fastify';
import { expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { handleErrors } from '../../../server/http/reply/error-handler.ts';
import type { ProblemReply } from '../../../server/http/reply/problem-reply.ts';

const problemOn = async (ask: (app: FastifyInstance) => Promise<{ json: <T>() => T }>) => {
  const faults: string[] = [];
  const app = fastify();
  handleErrors(app, (text) => faults.push(text));
  app.post('/a', async () => 'answer');
  app.get('/fault', async () => {
    throw new Error('Secret of the program');
  });
  return { body: (await ask(app)).json<ProblemReply>(), faults };
};

it('an address that nothing answers is named, and where the known ones are', async () => {
  const { body, faults } = await problemOn((app) => app.inject('/nowhere?a=1'));
  expect(body).toMatchObject({ code: 'not-found', status: 404, remedy: 'See /api/docs for the addresses.' });
  expect(body.detail).toBe('GET /nowhere?a=1; expected an address that this server knows.');
  expect(faults).toEqual([]);
});

it('what the framework refuses is told in its words, in one sentence', async () => {
  const headers = { 'content-type': 'application/json' };
  const { body } = await problemOn((app) => app.inject({ method: 'POST', url: '/a', headers, payload: '' }));
  expect(body).toMatchObject({ code: 'request-invalid', status: 400, remedy: 'Correct the request.' });
  expect(body.detail).toBe(
    "Body cannot be empty when content-type is set to 'application/json'; expected a request as in /api/docs.",
  );
});

it('a fault of the program is told to whoever runs it, and not to the client', async () => {
  const { body, faults } = await problemOn((app) => app.inject('/fault'));
  expect(body).toMatchObject({ code: 'internal', status: 500 });
  expect(JSON.stringify(body)).not.toContain('Secret');
  expect(faults).toHaveLength(1);
  expect(faults[0]).toContain('Secret of the program');
});

it('holds no sign that a terminal takes as an order or that turns the direction of reading', async () => {
  const { body } = await problemOn((app) => {
    app.get('/refused', async () => {
      const signs = 'a\u001b[2J\u009b31m\u202e\u2028b';
      throw new InputProblem({
        code: 'not-xml',
        source: signs,
        place: signs,
        came: signs,
        expected: 'x',
        remedy: signs,
      });
    });
    return app.inject('/refused');
  });
  expect(Object.values(body).join('')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(body.detail).toBe('a [2J 31m b, a [2J 31m b: a [2J 31m b; expected x.');
});
