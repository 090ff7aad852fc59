/** One line of a benchmark: what was done by whom, with the median of several runs. */
export interface BenchRow {
  what: string;
  /** "drystage" or the peer's name and version. */
  who: string;
  medianMs: number;
  runs: number;
  /** Peak resident memory of the process that did it, MB, where measured. */
  peakMb?: number;
  note?: string;
}

/** A group of rows with the target that the project set itself, in words, and whether these rows met it. */
export interface BenchGroup {
  title: string;
  target: string;
  met: boolean | null;
  rows: BenchRow[];
}

export type Bench = () => Promise<BenchGroup>;

/** For the server to warm its planning workers after its first answer, which costs one of two cores for some seconds. */
export const SETTLE_MS = 18_000;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle];
  if (upper === undefined) throw new Error('median of nothing');
  const lower = sorted[middle - 1];
  return sorted.length % 2 === 1 || lower === undefined ? upper : (lower + upper) / 2;
}

/** Runs `work` `runs` times and gives the median wall time in milliseconds. */
export async function medianMsOf(runs: number, work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return median(times);
}
