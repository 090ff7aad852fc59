import { appendFileSync, closeSync, fstatSync, openSync, readSync } from 'node:fs';

/** What the threads that try mutants tell each other and the run: lines added to one file. */
export type Note =
  | { note: 'trying'; by: number; id: string }
  | { note: 'idle'; by: number }
  | { note: 'noticed'; id: string; test: string }
  | { note: 'met'; ids: string[] }
  | { note: 'loaded'; ids: string[] }
  | { note: 'unsteady'; test: string }
  | { note: 'file'; file: string };

export const addNote = (path: string, note: Note): void => appendFileSync(path, `${JSON.stringify(note)}\n`);

/** Reads, each time it is called, the notes that have come since. */
export function noteReader(path: string): () => Note[] {
  let from = 0;
  return () => {
    const file = openSync(path, 'r');
    try {
      const bytes = Buffer.alloc(fstatSync(file).size - from);
      const length = readSync(file, bytes, 0, bytes.length, from);
      // A line that is just being written waits for the next time.
      const whole = bytes.subarray(0, length).lastIndexOf(10) + 1;
      from += whole;
      const lines = bytes.subarray(0, whole).toString('utf8').split('\n').slice(0, -1);
      return lines.map((line) => JSON.parse(line) as Note);
    } finally {
      closeSync(file);
    }
  };
}
