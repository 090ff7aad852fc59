// A .ts file cannot be a worker's entry on Node 20, so this one prepares the way for it. The hook for `require` works
// within the thread; the one for `import` would start a second thread for each worker, with time and memory to match.
import { createRequire } from 'node:module';
import { register } from 'tsx/cjs/api';

register();
createRequire(import.meta.url)('./worker-entry.ts');
