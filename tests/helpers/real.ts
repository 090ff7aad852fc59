import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';

/** The folder of real routes and extracts, beside the project's root; read in place, never copied. */
export const REAL_FOLDER = fileURLToPath(new URL('../../../shared/real/', import.meta.url));
export const realFolderThere = existsSync(REAL_FOLDER);

/** Absolute path of a real file: `realPath('routes/swiss-grand-tour.gpx')`. */
export const realPath = (name: string): string => `${REAL_FOLDER}${name}`;

/** Mark that the reporter looks for in a suite's name. */
export const REAL_MARK = '[real data]';

/**
 * A suite on real data. It runs when the folder is there; the reporter fails the run when the folder is there and
 * one of these did not run, and says so in words when the folder is not there.
 */
export const describeReal = (name: string, body: () => void): void => suite(name, {}, body);

/** The same, tagged as slow. */
export const describeSlowReal = (name: string, body: () => void): void => suite(name, { tags: 'slow' }, body);

function suite(name: string, options: { tags?: 'slow' }, body: () => void): void {
  const title = `${REAL_MARK} ${name}`;
  if (realFolderThere) describe(title, options, body);
  else describe.skip(title, options, body);
}
