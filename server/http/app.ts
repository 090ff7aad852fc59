import multipart from '@fastify/multipart';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import fastify, { type FastifyInstance } from 'fastify';
import { today } from '../app/today.ts';
import type { Interpreter } from '../io/overpass/ask.ts';
import { interpreterOf } from '../io/overpass/interpreter.ts';
import type { Store } from '../store/library/store.ts';
import { memoryStore } from '../store/open-store.ts';
import { tendHourly } from '../store/tending/tending.ts';
import { logAccess } from './access-log.ts';
import { describeApi } from './api-document.ts';
import { guard } from './guards.ts';
import { answerOwnRequests } from './own-requests.ts';
import { servePage, WEB_FOLDER } from './page.ts';
import { handleErrors, refuseAddress } from './reply/error-handler.ts';
import { valueOrThrow } from './reply/value-or-throw.ts';
import { speakAsAsked } from './request/asked-language.ts';
import { holdRequest } from './request/hold-request.ts';
import { requireSchemas } from './request/require-schemas.ts';
import { analysisRoutes } from './routes/analysis-routes.ts';
import { compareRoutes } from './routes/compare-routes.ts';
import { healthRoutes } from './routes/health-routes.ts';
import { keptRoutes } from './routes/kept/kept-routes.ts';
import { logRoutes } from './routes/log-routes.ts';
import { notesRoutes } from './routes/notes-routes.ts';
import { planFileRoutes } from './routes/plan-file-routes.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { sheetRoutes } from './routes/sheet-routes.ts';
import { takeAlongRoutes } from './routes/take-along-routes.ts';
import { AnalysisService } from './service/analysis-service.ts';
import { keepDemo } from './service/demo-trip.ts';
import { DEFAULT_LIMITS, type Limits } from './service/limits.ts';
import { requireSession, sessionRoutes } from './session/require-session.ts';
import { SessionKeeper } from './session/session-keeper.ts';

export interface AppOptions {
  limits?: Partial<Limits>;
  /** The day for seasons and ages of tags, YYYY-MM-DD; the machine's by default. */
  today?: () => string;
  /** What is kept, and where; in memory by default. It is closed with the app. */
  store?: Store;
  /** The Overpass server that is asked where a user says so; that of the environment by default. */
  interpreter?: Interpreter;
  /** Folder of the built page. */
  webFolder?: string;
  /** Told of the program's own faults; stderr by default. */
  onFault?: (text: string) => void;
  /** Names under which it is asked, beside those of this machine. */
  names?: readonly string[];
  /** What signs in whoever may use it; null, and by default, everybody may who reaches it. */
  secret?: string | null;
  /** Proxies whose word on the sender's address and scheme is taken. */
  trustProxy?: readonly string[];
  /** Takes a line for each answer; none are written by default. */
  onAccess?: (line: string) => void;
  /** Told of each route as it is made. */
  onRoute?: (method: string, url: string) => void;
}

/** A rig and a trip in JSON are small; uploads go by multipart, which has limits of its own. */
const JSON_BODY_BYTES = 1_000_000;

/** The framework with what holds for every route, before any is made. */
function bareApp(limits: Limits, { trustProxy = [], onRoute, onAccess }: AppOptions) {
  const app = fastify({
    bodyLimit: JSON_BODY_BYTES,
    requestTimeout: limits.uploadMs,
    trustProxy: trustProxy.length === 0 ? false : [...trustProxy],
    forceCloseConnections: 'idle',
    frameworkErrors: refuseAddress,
  }).withTypeProvider<TypeBoxTypeProvider>();
  requireSchemas(app);
  app.addHook('onRoute', ({ method, url }) => {
    for (const one of [method].flat()) onRoute?.(one, url);
  });
  if (onAccess !== undefined) logAccess(app, onAccess);
  app.setValidatorCompiler(holdRequest);
  // Large replies are JSON bytes already.
  app.setSerializerCompiler(() => (value) => JSON.stringify(value));
  return app;
}

/** Composes the server; main.ts listens, tests inject. Closing it ends its workers. */
export async function buildApp(options: AppOptions = {}): Promise<FastifyInstance> {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  const onFault = options.onFault ?? ((text: string) => console.error(text));
  const app = bareApp(limits, options);
  handleErrors(app, onFault);

  const store = options.store ?? memoryStore();
  await keepDemo(store);
  const service = new AnalysisService({ limits, today: options.today ?? today, onFault, store });
  const stopTending = tendHourly(store, onFault);
  app.addHook('onClose', async () => {
    stopTending();
    await service.close();
    store.close();
  });

  speakAsAsked(app);
  await guard(app, limits);
  answerOwnRequests(app, options.names ?? []);
  const sessions = options.secret == null ? null : new SessionKeeper(options.secret);
  if (sessions !== null) requireSession(app, sessions);
  await app.register(multipart);
  await describeApi(app);
  await app.register(sessionRoutes(sessions));
  await app.register(healthRoutes(service, store));
  await app.register(analysisRoutes(service, limits));
  await app.register(compareRoutes(service));
  await app.register(logRoutes(service));
  await app.register(planFileRoutes);
  await app.register(notesRoutes(options.today ?? today));
  await app.register(planRoutes(service));
  await app.register(sheetRoutes(service));
  await app.register(takeAlongRoutes(service));
  const interpreter = options.interpreter ?? valueOrThrow(interpreterOf(undefined));
  await app.register(keptRoutes({ store, service, limits, interpreter, isShared: sessions !== null }));
  await servePage(app, options.webFolder ?? WEB_FOLDER);
  return app;
}
