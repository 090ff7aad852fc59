import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { LANGUAGES, type Language } from '../../words/parts/language.ts';
import { speaking } from '../../work/speaking.ts';

interface Wish {
  readonly tag: string;
  readonly weight: number;
}

/** `de-CH;q=0.8` as a wish; what cannot be read is wanted least. */
function wishOf(text: string): Wish {
  const [tag = '', ...rest] = text.split(';').map((piece) => piece.trim().toLowerCase());
  const weight = rest.find((piece) => piece.startsWith('q='))?.slice(2);
  return { tag, weight: weight === undefined ? 1 : Number(weight) || 0 };
}

/** The language that an `Accept-Language` header (RFC 9110, 12.5.4) asks for most; English where it asks for none of ours. */
export function askedLanguage(header: string | undefined): Language {
  const wishes = (header ?? '')
    .split(',')
    .map(wishOf)
    .filter(({ weight }) => weight > 0)
    .toSorted((a, b) => b.weight - a.weight);
  const known = wishes.flatMap(({ tag }) =>
    LANGUAGES.filter((each) => tag === each || tag.startsWith(`${each}-`)),
  );
  return known[0] ?? 'en';
}

/** Has all that is done for a request said in the language that it asks for. */
export function speakAsAsked(app: FastifyInstance): void {
  const speak = (request: FastifyRequest, reply: FastifyReply, done: () => void): void => {
    void reply.header('vary', 'accept-language');
    speaking(askedLanguage(request.headers['accept-language']), done);
  };
  app.addHook('onRequest', speak);
  // Once more: reading a body ends in the context of its connection.
  app.addHook('preHandler', speak);
}
