import type { FastifyReply } from 'fastify';

const JSON_TYPE = 'application/json; charset=utf-8';

/** Sends what is bytes already: JSON, unless another type is told. */
export const sendBytes = (reply: FastifyReply, bytes: Uint8Array, type = JSON_TYPE): FastifyReply =>
  reply.type(type).send(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));

/** Aborts when the client goes away before it was answered. */
export function goneSignal(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  if (reply.raw.destroyed) controller.abort();
  return controller.signal;
}
