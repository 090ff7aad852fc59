// Where every worker starts, before any TypeScript.
import { fileURLToPath } from 'node:url';
import { workerData } from 'node:worker_threads';
import { load } from '../start/from-source.mjs';

// A bundle of its own: what it says is said by its own words.
const { tasks, speaking } = await load(fileURLToPath(workerData.tasks));
const { serve } = await load('work/serve-tasks.ts');
serve(tasks, speaking);
