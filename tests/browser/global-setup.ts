import type { TestProject } from 'vitest/node';
import { removeBrowser, type UnpackedBrowser, unpackBrowser } from '../helpers/browser.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    browser: UnpackedBrowser;
  }
}

/** One browser for the run, in a folder of its own that goes with it. Where it cannot be had, the run fails. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const browser = await unpackBrowser();
  project.provide('browser', browser);
  return () => removeBrowser(browser);
}
