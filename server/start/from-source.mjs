// Node 20 starts no .ts file. What the command line and the workers start from is bundled into one file of JavaScript,
// kept in node_modules/.cache and taken from there as long as nothing that it may be made of has changed: it loads in a
// tenth of the time that several hundred files take. Where no bundle can be made tsx's hook for `require` takes the
// TypeScript as it is; the one for `import` would start a second thread, with time and memory to match.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { threadId } from 'node:worker_threads';

const SERVER = fileURLToPath(new URL('../', import.meta.url));
const LOCK = fileURLToPath(new URL('../../package-lock.json', import.meta.url));
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/drystage/', import.meta.url));
/** They find files of their own beside them, or are loaded at their first use alone. */
const LEFT_OUT = ['esbuild', 'fontkit', 'highs', 'opening_hours', 'pdfmake'];

const require = createRequire(import.meta.url);

/** What a .ts file exports; its path is absolute or begins in the folder of the server. */
export async function load(file) {
  const path = resolve(SERVER, file);
  const bundle = await bundleOf(path);
  if (bundle !== null) return require(bundle);
  require('tsx/cjs/api').register();
  return require(path);
}

/** The path of a file's bundle, made where there is none of all that it may be made of; null where none can be. */
async function bundleOf(path) {
  // What others, such as tests, have beside the server is not looked at for changes.
  if (!path.startsWith(SERVER)) return null;
  const ofFile = `${basename(path, '.ts')}-${hashOf([path])}-`;
  const name = `${ofFile}${hashOf([...contents(SERVER), readFileSync(LOCK), process.version])}.cjs`;
  const bundle = join(CACHE, name);
  if (existsSync(bundle)) return bundle;
  try {
    const text = await bundled(path);
    mkdirSync(CACHE, { recursive: true });
    // Under its name it is whole: others may look for it meanwhile.
    const part = `${bundle}.${process.pid}.${threadId}`;
    writeFileSync(part, text);
    renameSync(part, bundle);
    const old = readdirSync(CACHE).filter((other) => other.startsWith(ofFile) && other.endsWith('.cjs'));
    for (const other of old) if (other !== name) rmSync(join(CACHE, other), { force: true });
    return bundle;
  } catch {
    return null;
  }
}

/** Of every file below a folder its path and what it holds. */
function* contents(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* contents(path);
    else yield* [path, readFileSync(path)];
  }
}

function hashOf(parts) {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part).update('\0');
  return hash.digest('hex').slice(0, 16);
}

async function bundled(path) {
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    entryPoints: [path],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    external: LEFT_OUT,
    logLevel: 'silent',
    plugins: [OWN_PLACES],
  });
  return outputFiles[0].contents;
}

/** Files look for others beside them by their own place, which is not the bundle's. */
const OWN_PLACES = {
  name: 'own places',
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      const place = JSON.stringify(pathToFileURL(path).href);
      return { contents: text.replaceAll('import.meta.url', place), loader: 'ts' };
    });
  },
};
