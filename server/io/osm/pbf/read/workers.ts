import type { Job, JobResult } from './jobs.ts';

/** Does jobs and hands each result on in the order of the jobs, wherever it was done. */
export interface Workers {
  /** @throws InputProblem of a job; the signal's reason when aborted. */
  run(jobs: Iterable<Job>, take: TakeResult): Promise<void>;
  close(): Promise<void>;
}

export type TakeResult = (result: JobResult, job: Job) => void;
