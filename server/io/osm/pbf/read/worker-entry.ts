import { parentPort, workerData } from 'node:worker_threads';
import { InputProblem } from '../../../../core/input/problem.ts';
import { type Job, JobDoer, type JobSettings } from './jobs.ts';
import type { WorkerReply } from './worker-threads.ts';

if (parentPort === null) throw new Error('worker-entry.ts only runs as a worker');
const port = parentPort;
const doer = new JobDoer(workerData as JobSettings);

function reply(job: Job): WorkerReply {
  try {
    return { ok: true, result: doer.do(job) };
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    return { ok: false, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

port.on('message', (job: Job) => port.postMessage(reply(job)));
