// A .ts file cannot be a worker's entry on Node 20, so this one prepares the way for it.
import { register } from 'tsx/esm/api';

register();
await import('./worker-entry.ts');
