import type { Json } from '../json-path.ts';

/** Reads a rig or trip file that the reader opened: YAML, of which JSON is a part. Throws a plain Error with the reason. */
export async function readOwnFile(file: File): Promise<Json> {
  const text = await file.text();
  // Read on demand: few visits open such a file.
  const { parse } = await import('yaml');
  let value: unknown;
  try {
    value = parse(text, { maxAliasCount: 100 });
  } catch (error) {
    throw new Error(
      `${file.name} is neither YAML nor JSON: ${error instanceof Error ? error.message : error}`,
    );
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Error(`${file.name} holds no keys; a rig or trip file has lines like “fuel:” or “onward:”.`);
  }
  return value as Json;
}
