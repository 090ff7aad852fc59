import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** A browser unpacked into a folder of this run: its program and the surroundings it must be started with. */
export interface UnpackedBrowser {
  folder: string;
  executablePath: string;
  env: Record<string, string>;
}

/** The package looks at these as it is loaded: they make it bring its own libraries, which a bare system lacks. */
const OWN_LIBRARIES = { AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' };

/**
 * A headless browser that draws WebGL in software. The package's own flags run all in one process, which dies. What is
 * around the map is put together by the processor outright: through WebGL in software too it takes four times as long.
 */
const FLAGS = [
  '--no-sandbox',
  '--no-zygote',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-compositing',
];

/**
 * Unpacks the browser that npm installed, about 1.5 s. Once a run: two at a time get in each other's way, since the
 * package is told its place by TMPDIR only. Give `folder` to `removeBrowser` afterwards.
 */
export async function unpackBrowser(): Promise<UnpackedBrowser> {
  const folder = await mkdtemp(join(tmpdir(), 'drystage-browser-'));
  const before = { ...process.env };
  Object.assign(process.env, OWN_LIBRARIES, { TMPDIR: folder });
  try {
    const { default: packed } = await import('@sparticuz/chromium');
    const executablePath = await packed.executablePath();
    await pointAtOwnFonts(folder);
    const env = Object.fromEntries(
      Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
    );
    return { folder, executablePath, env: { ...env, HOME: folder } };
  } finally {
    for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
    Object.assign(process.env, before);
  }
}

/**
 * The package's fonts.conf looks for its fonts in /tmp/fonts, wherever they were unpacked. Without any font the browser
 * ends itself at the first text.
 */
async function pointAtOwnFonts(folder: string): Promise<void> {
  const place = join(folder, 'fonts', 'fonts.conf');
  const conf = await readFile(place, 'utf8');
  const own = conf
    .replace('<dir>/tmp/fonts</dir>', `<dir>${join(folder, 'fonts', 'fonts')}</dir>`)
    .replace('/tmp/fonts-cache/', join(folder, 'fonts-cache'));
  await writeFile(place, own);
}

export const removeBrowser = (browser: UnpackedBrowser): Promise<void> =>
  rm(browser.folder, { recursive: true, force: true, maxRetries: 5 });

/** Starts the unpacked browser; close it in the end. */
export const startBrowser = (browser: UnpackedBrowser): Promise<Browser> =>
  chromium.launch({ executablePath: browser.executablePath, env: browser.env, args: FLAGS, headless: true });
