import { Type, type TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import fastify from 'fastify';
import { describe, expect, it } from 'vitest';
import { RigFile } from '../../../server/contract/rig.ts';
import { handleErrors } from '../../../server/http/reply/error-handler.ts';
import { holdRequest } from '../../../server/http/request/hold-request.ts';
import { requireSchemas } from '../../../server/http/request/require-schemas.ts';
import { streamed } from '../../../server/http/request/streamed.ts';

function bareApp() {
  const app = fastify().withTypeProvider<TypeBoxTypeProvider>();
  requireSchemas(app);
  app.setValidatorCompiler(holdRequest);
  handleErrors(app, (text) => {
    throw new Error(text);
  });
  return app;
}

const handler = async () => 'answer';
const nothing = Type.Object({});

describe('a route', () => {
  it.each([
    ['no schema', '/a', undefined, 'GET /a takes requests without a schema'],
    ['a parameter without one', '/a/:id', {}, 'GET /a/:id takes params without a schema'],
  ])('with %s does not start', (_name, url, schema, text) => {
    expect(() => bareApp().get(url, schema === undefined ? {} : { schema }, handler)).toThrow(text);
  });

  it.each(['POST', 'PUT', 'PATCH'] as const)(
    'that takes a body by %s without a schema does not start',
    (method) => {
      const schema = { params: nothing };
      expect(() => bareApp().route({ method, url: '/a/:id', schema, handler })).toThrow(
        `${method} /a/:id takes a body without a schema: give its route one`,
      );
    },
  );

  it('starts with a schema for each part, and so do files that a plugin serves', async () => {
    const app = bareApp();
    app.get('/a/:id', { schema: { params: Type.Object({ id: Type.String() }) } }, handler);
    app.post('/a', { schema: { body: nothing } }, handler);
    app.get('/*', { schema: { hide: true } as object }, handler);
    await app.ready();
  });
});

describe('a body that the route takes by itself', () => {
  it('is marked so in its schema, which keeps what it documents', () => {
    const schema = streamed(Type.Object({}, { description: 'a form' }));
    expect(schema).toMatchObject({ description: 'a form', 'x-streamed': true });
  });
});

describe('a request', () => {
  const app = bareApp();
  const closed = { additionalProperties: false };
  app.post(
    '/plain/:turn',
    {
      schema: {
        params: Type.Object({ turn: Type.Union([Type.Literal('left'), Type.Literal('right')]) }),
        querystring: Type.Object({ way: Type.Optional(Type.String()) }, closed),
        body: Type.Object({ litres: Type.Number({ minimum: 0 }), rig: Type.Optional(RigFile) }, closed),
      },
    },
    async ({ body, params, query }) => ({ litres: body.litres + 1, turn: params.turn, way: query.way }),
  );
  app.post('/streamed', { schema: { body: streamed(nothing) } }, async ({ body }) => ({ body }));
  const send = (url: string, payload: unknown) =>
    app.inject({
      method: 'POST',
      url,
      headers: { 'content-type': 'application/json' },
      payload: JSON.stringify(payload),
    });

  it('that fits comes to its handler as its type says', async () => {
    const response = await send('/plain/left?way=on', { litres: 2 });
    expect(response.json()).toEqual({ litres: 3, turn: 'left', way: 'on' });
  });

  it.each([
    ['a body of another kind', '/plain/left', [], 'request-invalid', null, 'the request'],
    ['a value out of range', '/plain/left', { litres: -1 }, 'request-invalid', null, '/litres'],
    ['an unknown key', '/plain/left', { litres: 1, l: 1 }, 'request-invalid', null, '/l'],
    ['a missing key', '/plain/left', {}, 'request-invalid', null, '/litres'],
    ['a parameter that is none', '/plain/up', { litres: 1 }, 'request-invalid', null, 'turn'],
    ['an unknown option', '/plain/left?why=1', { litres: 1 }, 'request-invalid', null, 'why'],
    ['an option twice', '/plain/left?way=1&way=2', { litres: 1 }, 'request-invalid', null, 'way'],
    ['a rig of another kind', '/plain/left', { litres: 1, rig: 3 }, 'rig-invalid', 'rig', null],
    [
      'a rig that does not fit',
      '/plain/left',
      { litres: 1, rig: { fuel: {} } },
      'rig-invalid',
      'rig',
      '/water',
    ],
  ])('with %s does not come to it', async (_name, url, payload, code, source, place) => {
    const response = await send(url, payload);
    expect(response.json()).toMatchObject({ code, source, place, status: response.statusCode });
  });

  it('cuts the place short where a client sends very long keys', async () => {
    const { place } = (await send('/plain/left', { litres: 1, ['k'.repeat(9_000)]: 1 })).json();
    expect(place).toBe(`/${'k'.repeat(40)}`);
  });

  it('whose body the route takes by itself is not held against the schema that documents it', async () => {
    expect((await send('/streamed', ['anything'])).json()).toEqual({ body: ['anything'] });
  });
});
