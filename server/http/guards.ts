import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';
import type { Limits } from './service/limits.ts';

/** Headers that keep a browser from loading what is not ours, and a limit on requests a minute. */
export async function guard(app: FastifyInstance, limits: Limits): Promise<void> {
  await app.register(helmet, {
    // The page is served over plain HTTP on the own machine or network: no upgrade of its requests to HTTPS.
    strictTransportSecurity: false,
    contentSecurityPolicy: {
      directives: {
        upgradeInsecureRequests: null,
        imgSrc: ["'self'", 'data:', 'blob:'],
        workerSrc: ["'self'", 'blob:'],
      },
    },
  });
  await app.register(rateLimit, {
    timeWindow: '1 minute',
    max: ({ ip }) => (isLocal(ip) ? limits.requestsPerMinuteLocal : limits.requestsPerMinute),
  });
}

const isLocal = (ip: string) => ip === '::1' || ip.startsWith('127.') || ip.startsWith('::ffff:127.');
