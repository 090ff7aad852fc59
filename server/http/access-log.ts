import type { FastifyInstance } from 'fastify';
import { plain } from '../core/input/unseen.ts';

/** A line for each answer: when, who, what was asked (without what stands behind the address), what came of it, in which time. */
export function logAccess(app: FastifyInstance, write: (line: string) => void): void {
  app.addHook('onResponse', async ({ ip, method, url }, reply) => {
    const [path = ''] = url.split('?');
    const took = reply.elapsedTime.toFixed(0);
    write(
      `${new Date().toISOString()} ${ip} ${method} ${plain(path).slice(0, 200)} ${reply.statusCode} ${took} ms`,
    );
  });
}
