import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { buildApp } from '../../server/http/app.ts';
import { removeBrowser, type UnpackedBrowser, unpackBrowser } from '../helpers/browser.ts';
import { PLAN_SECONDS } from '../helpers/patience.ts';
import { SmallOverpass } from '../io/overpass/small-overpass.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    browser: UnpackedBrowser;
    /** Where the app listens. */
    origin: string;
  }
}

const BUILT_PAGE = fileURLToPath(new URL('../../web/dist/index.html', import.meta.url));

/**
 * One browser for the run, in a folder of its own that goes with it, and the app as production builds it, on a free
 * port: its workers take many seconds to come to speed. Where either cannot be had, the run fails.
 */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(BUILT_PAGE))
    throw new Error('The page is not built: run "npm run build" before the browser tests');
  const browser = await unpackBrowser();
  // Two supplies beside the demo's route; nothing else is there to be asked.
  const overpass = new SmallOverpass([
    { id: 1, lat: -35.2, lon: 86, tags: { amenity: 'fuel' } },
    { id: 2, lat: -35.4, lon: 88, tags: { amenity: 'drinking_water' } },
  ]);
  const interpreter = { ...(await overpass.start()), pauseMs: 0 };
  const app = await buildApp({ limits: { planSeconds: PLAN_SECONDS }, interpreter });
  project.provide('browser', browser);
  project.provide('origin', await app.listen({ port: 0, host: '127.0.0.1' }));
  return async () => {
    await app.close();
    overpass.stop();
    await removeBrowser(browser);
  };
}
