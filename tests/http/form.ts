import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const demoPath = (name: string) =>
  fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));
export const demoBytes = (name: string) => readFileSync(demoPath(name));

type Part = { name: string; text: string } | { name: string; file: string; bytes: Uint8Array | string };

/** A multipart body with its header, for inject: parts in the order given. */
export function formOf(parts: readonly Part[]): { payload: Buffer; headers: Record<string, string> } {
  const boundary = 'drystage-test-boundary';
  const chunks: Buffer[] = [];
  for (const part of parts) {
    const file = 'file' in part ? `; filename="${part.file}"\r\nContent-Type: application/octet-stream` : '';
    chunks.push(
      Buffer.from(`--${boundary}\r\nContent-Disposition: form-data; name="${part.name}"${file}\r\n\r\n`),
    );
    chunks.push(Buffer.from('file' in part ? part.bytes : part.text));
    chunks.push(Buffer.from('\r\n'));
  }
  chunks.push(Buffer.from(`--${boundary}--\r\n`));
  return {
    payload: Buffer.concat(chunks),
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
  };
}

/** The demo's own files as a form, with some parts put in place of theirs. */
export function demoForm(
  changes: Partial<Record<'route' | 'extract' | 'rig' | 'trip', string | Uint8Array>> = {},
) {
  return formOf([
    { name: 'route', file: 'route.gpx', bytes: changes.route ?? demoBytes('route.gpx') },
    { name: 'extract', file: 'orrimar.osm.pbf', bytes: changes.extract ?? demoBytes('orrimar.osm.pbf') },
    { name: 'rig', text: String(changes.rig ?? demoBytes('rig.yaml')) },
    { name: 'trip', text: String(changes.trip ?? demoBytes('trip.yaml')) },
  ]);
}
