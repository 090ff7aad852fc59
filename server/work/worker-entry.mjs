// Where every worker starts, before any TypeScript.
import { fileURLToPath } from 'node:url';
import { workerData } from 'node:worker_threads';
import { load } from '../start/from-source.mjs';

const { tasks } = await load(fileURLToPath(workerData.tasks));
const { serve } = await load('work/serve-tasks.ts');
serve(tasks);
