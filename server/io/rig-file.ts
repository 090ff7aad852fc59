import { checkRigValue } from '../app/input/plan-input.ts';
import type { RigFile } from '../contract/rig.ts';
import type { Outcome } from '../core/input/problem.ts';
import { readYamlFile, withLine } from './yaml-file.ts';
import { parseYaml } from './yaml-text.ts';

/** Reads a rig file, YAML or JSON. A refusal names the file, the key's path with its line, and the remedy. */
export async function readRigFile(path: string): Promise<Outcome<RigFile>> {
  const parsed = await readYamlFile(path, 'a rig file (YAML or JSON)');
  if (!parsed.ok) return parsed;
  return withLine(checkRigValue(parsed.value.value, path), parsed.value.lineOf);
}

/** A rig from text that came with a request; places are key paths alone. */
export function parseRig(text: string, source: string): Outcome<RigFile> {
  const parsed = parseYaml(text, source);
  return parsed.ok ? checkRigValue(parsed.value.value, source) : parsed;
}
