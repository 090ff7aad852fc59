import { type FastifyPluginAsyncTypebox, Type } from '@fastify/type-provider-typebox';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { InputProblem } from '../../core/input/problem.ts';
import { ProblemReply } from '../reply/problem-reply.ts';
import type { SessionKeeper } from './session-keeper.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Answered without a session: signing in, and the page itself, which holds nothing of anybody's. */
    isOpen?: true;
  }
}

const COOKIE = 'drystage';
/** The page's own files. */
const PAGE = ['/', '/*'];
/** Tries to sign in from one address, and in which time. Ours. */
const TRIES = { max: 10, timeWindow: '15 minutes' };

/** The session that a request's cookie names. */
function sessionOf({ headers }: FastifyRequest): string | null {
  for (const part of (headers.cookie ?? '').split(';')) {
    const [name, value] = part.trim().split('=');
    if (name === COOKIE && value !== undefined) return value;
  }
  return null;
}

/** For this host and its pages alone, no script can read it, and over TLS it goes over nothing else. */
function setCookie(request: FastifyRequest, reply: FastifyReply, id: string, more: string): void {
  const secure = request.protocol === 'https' ? '; Secure' : '';
  reply.header('set-cookie', `${COOKIE}=${id}; Path=/; HttpOnly; SameSite=Strict${secure}${more}`);
}

/** Answers whoever has signed in alone, whatever they ask for, but for the page's files and signing in. */
export function requireSession(app: FastifyInstance, sessions: SessionKeeper): void {
  app.addHook('onRequest', async (request) => {
    const { config, url } = request.routeOptions;
    if (config.isOpen === true || (url !== undefined && PAGE.includes(url))) return;
    const id = sessionOf(request);
    if (id !== null && sessions.holds(id)) return;
    throw new InputProblem({
      code: 'not-signed-in',
      came: 'a request of nobody who is signed in',
      expected: 'the cookie of a session',
      remedy: 'Open the page and sign in, or send the secret to POST /api/session',
    });
  });
}

const SignIn = Type.Object({ secret: Type.String({ maxLength: 1000 }) }, { additionalProperties: false });
const SignedIn = Type.Object({ signedIn: Type.Boolean() });
const REPLIES = { 200: SignedIn, '4xx': ProblemReply };

/** Signing in and out. Without a secret there is nobody to sign in: both do nothing. */
export function sessionRoutes(sessions: SessionKeeper | null): FastifyPluginAsyncTypebox {
  return async (app) => {
    app.post(
      '/api/session',
      {
        config: { isOpen: true, rateLimit: TRIES },
        schema: { summary: 'Sign in with the secret of the server', body: SignIn, response: REPLIES },
      },
      async (request, reply) => {
        if (sessions === null) return { signedIn: true };
        if (!sessions.isSecret(request.body.secret))
          throw new InputProblem({
            code: 'not-signed-in',
            came: 'another secret than the one of this server',
            expected: 'the secret that it was started with (DRYSTAGE_SECRET)',
            remedy: 'Ask whoever runs it',
          });
        setCookie(request, reply, sessions.open(), '');
        return { signedIn: true };
      },
    );
    app.delete(
      '/api/session',
      { config: { isOpen: true }, schema: { summary: 'Sign out', response: REPLIES } },
      async (request, reply) => {
        const id = sessionOf(request);
        if (id !== null) sessions?.close(id);
        setCookie(request, reply, '', '; Max-Age=0');
        return { signedIn: sessions === null };
      },
    );
  };
}
