import { parseArgs } from 'node:util';
import { reportText } from './app/text/report-text.ts';
import type { AnalysisReply } from './contract/answers/map.ts';
import { InputProblem, type Problem, problemLine } from './core/input/problem.ts';
import { buildApp } from './http/app.ts';
import { operatorSettings } from './http/operator.ts';
import { interpreterOf } from './io/overpass/interpreter.ts';
import { databaseUrl, dataFolder } from './store/data-folder.ts';
import type { Store } from './store/library/store.ts';
import { serverDatabase, serverStore } from './store/open-store.ts';

const DEFAULT_HOST = '127.0.0.1';
const DEFAULT_PORT = '8460';
/** Connections still open this long after a stop was asked for are cut. */
const STOP_MS = 5_000;

/** Ends the process with one line, as the command line does. */
function stopWith(problem: Omit<Problem, 'source'>): never {
  process.stderr.write(`${problemLine({ source: null, ...problem })}\n`);
  process.exit(2);
}

const host = process.env.HOST?.trim() || DEFAULT_HOST;
const portText = process.env.PORT?.trim() || DEFAULT_PORT;
const port = /^\d{1,5}$/.test(portText) ? Number(portText) : Number.NaN;
if (!(port <= 65_535)) {
  stopWith({
    code: 'command-invalid',
    place: 'PORT',
    came: `"${portText}"`,
    expected: 'a whole number from 0 to 65535',
    remedy: `Set PORT to a free port, or leave it out for ${DEFAULT_PORT}`,
  });
}

/** What the words after the program say: the Overpass server. */
function overpassOption(): string | undefined {
  try {
    return parseArgs({ options: { overpass: { type: 'string' } } }).values.overpass;
  } catch (error) {
    stopWith({
      code: 'command-invalid',
      place: null,
      came: error instanceof Error ? error.message : String(error),
      expected: 'nothing, or --overpass ADDRESS',
      remedy: 'Start with npm start -- --overpass ADDRESS, or leave it out',
    });
  }
}

const operator = operatorSettings(process.env, host);
if (!operator.ok) stopWith(operator.problem);
const { secret, names, trustProxy } = operator.value;

const interpreter = interpreterOf(overpassOption());
if (!interpreter.ok) stopWith(interpreter.problem);

const folder = dataFolder();
const url = databaseUrl();

/** The store in the database where one is set, which then has to be there; else in the data folder. */
async function openStore(): Promise<Store> {
  if (url === null)
    return serverStore(folder, {
      onLost: (trouble) =>
        void process.stderr.write(`Nothing more is kept: ${problemLine({ ...trouble, source: folder })}\n`),
      onFound: () => void process.stderr.write(`All is kept again in ${folder}\n`),
    });
  try {
    return await serverDatabase(url, folder);
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    stopWith(error.problem);
  }
}

const store = await openStore();
const app = await buildApp({
  store,
  interpreter: interpreter.value,
  names: [host, ...names],
  secret,
  trustProxy,
  // Whoever shares it wants to know who asked for what.
  ...(secret !== null && { onAccess: (line: string) => void process.stdout.write(`${line}\n`) }),
});
try {
  await app.listen({ host, port });
} catch (error) {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EADDRINUSE' || code === 'EACCES') {
    stopWith({
      code: 'port-taken',
      place: 'PORT',
      came: `port ${port} on ${host} ${code === 'EACCES' ? 'is not ours to use' : 'is taken by another program'}`,
      expected: 'a free port',
      remedy: `Stop that program or choose another port: PORT=${port === 8460 ? 8461 : 8460} npm start`,
    });
  }
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND' || code === 'EAI_AGAIN') {
    stopWith({
      code: 'command-invalid',
      place: 'HOST',
      came: `"${host}"`,
      expected: 'an address of this machine',
      remedy: `Set HOST to one, or leave it out for ${DEFAULT_HOST}`,
    });
  }
  throw error;
}

let stopping = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    if (stopping) process.exit(1);
    stopping = true;
    setTimeout(() => process.exit(0), STOP_MS).unref();
    void app.close().then(() => process.exit(0));
  });
}

// Signs in as others do, so that no request goes round the secret.
const signedIn = await app.inject({ method: 'POST', url: '/api/session', payload: { secret: secret ?? '' } });
const cookie = String(signedIn.headers['set-cookie'] ?? '');
const demo = await app.inject({ url: '/api/demo', headers: { cookie } });
await app.inject({ method: 'DELETE', url: '/api/session', headers: { cookie } });
if (demo.statusCode === 200) {
  const { analysis, map } = demo.json<AnalysisReply>();
  process.stdout.write(`${reportText(analysis, map.notice)}\n`);
} else {
  const { detail, remedy } = demo.json<{ detail: string; remedy: string }>();
  process.stderr.write(`The demo could not be loaded: ${detail} ${remedy}\n`);
}
const { keeps, why } = store.state;
if (keeps === 'database') process.stdout.write('Database: that of DATABASE_URL\n');
else if (keeps === 'folder') process.stdout.write(`Data folder: ${folder} (DRYSTAGE_DATA chooses another)\n`);
else process.stderr.write(`Nothing is kept: ${why}\n`);
if (keeps !== 'memory' && why !== null) process.stderr.write(`${why}\n`);
const address = app.server.address();
const shownPort = typeof address === 'object' && address !== null ? address.port : port;
const shownHost = host.includes(':') ? `[${host}]` : host;
process.stdout.write(`Open http://${shownHost}:${shownPort} (Ctrl-C stops the server)\n`);
