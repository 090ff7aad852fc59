import { type ChildProcess, fork } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Word } from './child.ts';

/** A single input may take so long, milliseconds of the processor where the system tells them. */
const HANG_MS = 5000;
/** Most memory of a child, MB: the readers' bounds and what the program takes by itself. Ours. */
const MOST_MB = 700;

export interface Finding {
  number: number;
  format: string;
  wrong: string;
  /** Where its input was put. */
  path: string;
}

export interface FuzzOptions {
  seconds: number;
  /** Ends sooner after so many inputs. */
  count?: number;
  seed: number;
  children: number;
  /** Where inputs of findings are put. */
  findings: string;
  onFinding?: (finding: Finding) => void;
}

/** Reads changed files in child processes until the time is up: findings, inputs tried, and the most memory of a child in MB. */
export async function fuzz(
  options: FuzzOptions,
): Promise<{ findings: Finding[]; tried: number; outcomes: number; mostMb: number }> {
  const { seconds, count = Number.POSITIVE_INFINITY, seed, children, onFinding } = options;
  const result = { findings: [] as Finding[], tried: 0, outcomes: 0, mostMb: 0 };
  mkdirSync(options.findings, { recursive: true });
  const until = Date.now() + seconds * 1000;
  const isOver = () => Date.now() > until || result.tried >= count;
  const found = (at: { at: number; format: string; path: string }, wrong: string): void => {
    const path = join(options.findings, `${at.format}-${at.at}`);
    copyFileSync(at.path, path);
    const finding = { number: at.at, format: at.format, wrong, path };
    result.findings.push(finding);
    onFinding?.(finding);
  };

  /** One child after the other: one that hangs or dies is replaced behind the input that did it. */
  async function lane(lane: number): Promise<void> {
    let next = seed * 1_000_000 + lane;
    while (!isOver()) {
      const child = started(next, children);
      let at: { at: number; format: string; path: string } | null = null;
      let beganMs = 0;
      child.on('message', (word: Word) => {
        if ('at' in word) {
          at = word;
          beganMs = processorMs(child);
          return;
        }
        result.tried += 1;
        if (word.isNew) result.outcomes += 1;
        if (word.wrong !== null && at !== null) found({ ...at, path: word.path }, word.wrong);
        at = null;
        next = word.done + children;
      });
      const wrong = await watch(child, () => ({ isBusy: at !== null, tookMs: processorMs(child) - beganMs }));
      if (wrong !== null && at !== null) {
        const last = at as { at: number; format: string; path: string };
        found(last, wrong);
        next = last.at + children;
      }
    }
  }

  /** Ends with the child: null where the time was up. */
  async function watch(
    child: ChildProcess,
    state: () => { isBusy: boolean; tookMs: number },
  ): Promise<string | null> {
    return new Promise((resolve) => {
      const end = (wrong: string | null) => {
        clearInterval(timer);
        child.removeAllListeners('exit');
        child.once('exit', () => resolve(wrong));
        child.kill('SIGKILL');
      };
      const timer = setInterval(() => {
        const mb = memoryMb(child);
        result.mostMb = Math.max(result.mostMb, mb);
        const { isBusy, tookMs } = state();
        if (isBusy && tookMs > HANG_MS) end(`took over ${HANG_MS / 1000} s`);
        else if (mb > MOST_MB) end(`took ${mb} MB`);
        else if (isOver()) end(null);
      }, 50);
      child.once('exit', (code, signal) => {
        clearInterval(timer);
        resolve(`ended its process: ${code ?? signal}`);
      });
    });
  }

  await Promise.all(Array.from({ length: children }, (_, number) => lane(number)));
  return result;
}

const started = (first: number, step: number): ChildProcess =>
  fork(fileURLToPath(new URL('./child.ts', import.meta.url)), [String(first), String(step)], {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });

/** What the system tells of a process (Linux); null where it tells nothing. */
function told(child: ChildProcess, file: string): string | null {
  try {
    return readFileSync(`/proc/${child.pid}/${file}`, 'utf8');
  } catch {
    return null;
  }
}

/** Time of the processor that a child has had; where the system does not tell, that of the clock. */
function processorMs(child: ChildProcess): number {
  // Fields 14 and 15, in hundredths of a second (proc(5)); the second field may hold blanks.
  const fields = told(child, 'stat')?.split(') ')[1]?.split(' ');
  return fields === undefined ? performance.now() : (Number(fields[11]) + Number(fields[12])) * 10;
}

/** Memory that a child holds now, MB. */
const memoryMb = (child: ChildProcess): number =>
  Math.round(Number(/VmRSS:\s+(\d+)/.exec(told(child, 'status') ?? '')?.[1] ?? 0) / 1024);
