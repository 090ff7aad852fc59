// Starts the command line without a build step. The hook for `require` works within the thread; the one for `import`
// would start a second thread, with some 40 MB and half a second to match.
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import { register } from 'tsx/cjs/api';

// Before anything else is loaded: V8 keeps its heaps small, reading threads' too.
setFlagsFromString('--optimize-for-size');
register();
await createRequire(import.meta.url)('./cli.ts').main(process);
