import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';

/** The built page in the checkout. */
export const WEB_FOLDER = fileURLToPath(new URL('../../web/dist/', import.meta.url));

/** Serves the page's files; without a built page, `/` says how to build it. */
export async function servePage(app: FastifyInstance, folder: string): Promise<void> {
  if (existsSync(`${folder}/index.html`)) {
    await app.register(fastifyStatic, { root: folder });
    return;
  }
  app.get('/', { schema: { hide: true } }, async (_request, reply) =>
    reply.type('text/plain; charset=utf-8').send('The page is not built yet. Run: npm run build\n'),
  );
}
