import { readFileSync } from 'node:fs';

const packageJson = new URL('../package.json', import.meta.url);

/** This program's version, as package.json and CHANGELOG.md have it. */
export const { version: VERSION } = JSON.parse(readFileSync(packageJson, 'utf8')) as { version: string };
