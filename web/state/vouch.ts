import type { ProblemDetails } from '../api/api.ts';
import type { Said } from './said.ts';

export type SaidFile = 'rig' | 'trip';

/** The file and the path of a figure that is refused only for being unusual; null for any other refusal. */
export function vouchableAt({
  code,
  place,
  vouchable,
}: ProblemDetails): { file: SaidFile; path: string } | null {
  if (!vouchable || place === null) return null;
  return { file: code === 'trip-invalid' ? 'trip' : 'rig', path: place };
}

/** What was said, with a figure marked as meant so. */
export function withSure(said: Said, file: SaidFile, path: string): Said {
  const sure = said[file].sure ?? [];
  return { ...said, [file]: { ...said[file], sure: [...sure.filter((each) => each !== path), path] } };
}

/** What was said, with a figure no longer marked as meant so. */
export function withoutSure(said: Said, file: SaidFile, path: string): Said {
  const { sure = [], ...rest } = said[file];
  const left = sure.filter((each) => each !== path);
  return { ...said, [file]: left.length === 0 ? rest : { ...rest, sure: left } };
}
