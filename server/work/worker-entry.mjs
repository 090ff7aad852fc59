// Where every worker starts. Node 20 starts no .ts worker, so this file prepares the way and then takes the TypeScript.
// The hook for `require` works within the thread; the one for `import` would start a second thread for each worker.
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { workerData } from 'node:worker_threads';
import { register } from 'tsx/cjs/api';

register();
const load = createRequire(import.meta.url);
const { serve } = load('./serve-tasks.ts');
serve(load(fileURLToPath(workerData.tasks)).tasks);
