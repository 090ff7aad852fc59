import type { FastifyReply } from 'fastify';

/** Sends JSON that is bytes already. */
export const sendBytes = (reply: FastifyReply, bytes: Uint8Array): FastifyReply =>
  reply.type('application/json; charset=utf-8').send(Buffer.from(bytes.buffer));

/** Aborts when the client goes away before it was answered. */
export function goneSignal(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  if (reply.raw.destroyed) controller.abort();
  return controller.signal;
}
