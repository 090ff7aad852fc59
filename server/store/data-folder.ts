import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';

/** The part of the environment that says where data lie. */
export type Environment = Readonly<Record<string, string | undefined>>;

/**
 * The folder in which all is kept: DRYSTAGE_DATA, else the folder that the system has for a program's data. An XDG
 * path that is not absolute counts as none (XDG Base Directory Specification 0.8).
 */
export function dataFolder(
  env: Environment = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): string {
  const own = env.DRYSTAGE_DATA?.trim();
  if (own !== undefined && own !== '') return resolve(own);
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Drystage');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Drystage');
  const xdg = env.XDG_DATA_HOME ?? '';
  return join(isAbsolute(xdg) ? xdg : join(home, '.local', 'share'), 'drystage');
}

/** The PostgreSQL database in which all is kept instead: DATABASE_URL; null where there is none. */
export function databaseUrl(env: Environment = process.env): string | null {
  const url = env.DATABASE_URL?.trim() ?? '';
  return url === '' ? null : url;
}
