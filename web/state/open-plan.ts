import { ApiProblem, detailsOf, readRig, readTrip } from '../api/api.ts';
import type { Said } from './said.ts';

/**
 * Reads a rig or trip file that the reader opened, YAML or JSON, and puts it in the place of what was said before.
 * The server reads it, as it does for the command line: the page carries no reader of its own. Throws a plain Error
 * that names the file, the place in it and what to do.
 */
export async function openPlan(kind: keyof Said, file: File, said: Said): Promise<Said> {
  const text = await file.text();
  try {
    return kind === 'rig' ? { ...said, rig: await readRig(text) } : { ...said, trip: await readTrip(text) };
  } catch (error) {
    throw new Error(refusalText(kind, file.name, error));
  }
}

/** "wagon.yaml, /fuel/tanks/0/litres (line 5): -3; expected … Correct …" */
function refusalText(kind: keyof Said, name: string, error: unknown): string {
  const { detail, remedy } = detailsOf(error);
  // The server knows the file as "rig" or "trip" only.
  const said = detail.replace(new RegExp(`^${kind}(?=[,:])`, 'i'), name);
  const named = said.startsWith(name) ? said : `${name}: ${said}`;
  const todo = error instanceof ApiProblem ? remedy : null;
  return todo === null || named.includes(todo) ? named : `${named} ${todo}`;
}
