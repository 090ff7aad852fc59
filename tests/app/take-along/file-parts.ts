import { createContext, runInContext } from 'node:vm';
import type { CabFile } from '../../../server/core/cab/cab-file.ts';
import type { CabAsk } from '../../../server/core/cab/cab-state.ts';

/** What stands between two marks, once each in the file. */
function between(html: string, before: string, after: string): string {
  const start = html.indexOf(before);
  const end = html.indexOf(after, start + before.length);
  if (start < 0 || end < 0) throw new Error(`not between ${before} and ${after}`);
  return html.slice(start + before.length, end);
}

/** The figures and the program of a file to take along, as a browser takes them out of it. */
export function partsOf(html: string): { json: string; script: string; policy: string } {
  return {
    json: between(html, '<script type="application/json" id="cab-file">', '</script>'),
    script: between(html, '<script>', '</script>'),
    policy: between(html, 'Content-Security-Policy" content="', '"'),
  };
}

export const cabFileIn = (html: string): CabFile => JSON.parse(partsOf(html).json) as CabFile;

/** What the program in a file says of states by the figures in it: run by itself, in a world with nothing else. */
export function statesIn(html: string, asks: readonly CabAsk[]): unknown {
  const { json, script } = partsOf(html);
  const world: Record<string, unknown> = {
    console,
    setTimeout,
    MessageChannel,
    document: { getElementById: (id: string) => (id === 'cab-file' ? { textContent: json } : null) },
  };
  createContext(world);
  runInContext(script, world);
  return JSON.parse(runInContext(`JSON.stringify(drystageStates(${JSON.stringify(asks)}))`, world));
}
