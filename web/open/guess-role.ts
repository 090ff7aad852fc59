export const ROLES = ['route', 'extract', 'rig', 'trip'] as const;
export type Role = (typeof ROLES)[number];

/** Enough of a file's beginning to tell what it is, bytes. */
const BEGINNING = 8192;

/**
 * What a file is for, from its beginning and its name. A guess for the reader to correct; the server judges by the
 * content. The first GPX is the route, a further one gives supplies as waypoints.
 */
export function guessRole(name: string, beginning: string, routeTaken: boolean): Role {
  if (/<gpx[\s>]/.test(beginning)) return routeTaken ? 'extract' : 'route';
  if (/<osm[\s>]/.test(beginning)) return 'extract';
  const looksLikeText = /\.(ya?ml|json)$/i.test(name) && !/"(elements|features|osm3s)"/.test(beginning);
  if (looksLikeText) {
    if (/^\s*"?(fuel|water|pace)"?\s*:\s*[{[\r\n]/m.test(beginning) && /tanks/.test(beginning)) return 'rig';
    if (
      /"?(aboard|onward|corridorKm|counting|departure|stays|campDays|allowancePercent)"?\s*:/.test(beginning)
    ) {
      return 'trip';
    }
  }
  return /\.gpx$/i.test(name) && !routeTaken ? 'route' : 'extract';
}

export interface OwnFile {
  key: string;
  file: File;
  role: Role;
}

let taken = 0;

/** The files with their guessed roles, after those chosen before. Rig, trip and route come once: a newer one takes over. */
export async function withFiles(before: readonly OwnFile[], added: readonly File[]): Promise<OwnFile[]> {
  let files = [...before];
  for (const file of added) {
    const beginning = await file.slice(0, BEGINNING).text();
    const routeTaken = files.some((each) => each.role === 'route');
    const role = guessRole(file.name, beginning, routeTaken);
    if (role !== 'extract') files = files.filter((each) => each.role !== role);
    taken += 1;
    files.push({ key: `${taken} ${file.name}`, file, role });
  }
  return files;
}
