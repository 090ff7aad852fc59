// Starts the command line without a build step.
import { setFlagsFromString } from 'node:v8';
import { load } from './start/from-source.mjs';

// Before anything else is loaded: V8 keeps its heaps small, reading threads' too.
setFlagsFromString('--optimize-for-size');
const { main } = await load('cli.ts');
await main(process);
