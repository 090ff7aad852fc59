import { parentPort } from 'node:worker_threads';
import type { AbortMessage, DoneMessage, JobMessage, TaskTable, ToldMessage } from './protocol.ts';
import type { Speaking } from './speaking.ts';

/** The worker's side: does each job that comes and answers it, a fault as text. */
export function serve(tasks: TaskTable, speaking: Speaking = (_language, act) => act()): void {
  const port = parentPort;
  if (port === null) throw new Error('serve runs in a worker thread');
  const running = new Map<number, AbortController>();

  const answer = (message: DoneMessage) => port.postMessage(message, transferable(message));

  port.on('message', async (message: JobMessage | AbortMessage) => {
    if ('abort' in message) {
      running.get(message.abort)?.abort();
      return;
    }
    const { job, name, ask, flag, language } = message;
    const word = new Int32Array(flag);
    const controller = new AbortController();
    running.set(job, controller);
    try {
      const task = tasks[name];
      if (task === undefined) throw new Error(`no task called ${name}`);
      const tell = (told: unknown) => port.postMessage({ job, told } satisfies ToldMessage);
      const givenUp = () => Atomics.load(word, 0) === 1;
      const give = await speaking(language, () => task(ask as never, controller.signal, givenUp, tell));
      answer({ job, give });
    } catch (error) {
      answer({ job, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    } finally {
      running.delete(job);
    }
  });
  port.postMessage('ready');
}

/** Bytes that an outcome carries, or its value beside others, are moved, not copied. */
function transferable(message: DoneMessage): ArrayBuffer[] {
  if (!('give' in message)) return [];
  const value = (message.give as { value?: unknown } | null)?.value;
  const parts =
    typeof value !== 'object' || value === null || isBytes(value) ? [value] : Object.values(value);
  return parts.filter(isBytes).map(({ buffer }) => buffer);
}

const isBytes = (value: unknown): value is Uint8Array<ArrayBuffer> =>
  value instanceof Uint8Array && value.buffer instanceof ArrayBuffer;
