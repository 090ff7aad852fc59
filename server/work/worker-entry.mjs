// Where every worker starts. Node 20 starts no .ts worker, so this file registers tsx and then takes the TypeScript.
import { workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
const { serve } = await import('./serve-tasks.ts');
const { tasks } = await import(workerData.tasks);
serve(tasks);
