import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import type { FastifyInstance } from 'fastify';

/** Serves the description of all routes that are registered after it, at /api/docs. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Drystage',
        description:
          'Fuel and water gaps of a route. Problems are RFC 9457; server/http/PROBLEMS.md lists them.',
        version: '1',
      },
    },
  });
  await app.register(swaggerUi, { routePrefix: '/api/docs', staticCSP: true });
}
