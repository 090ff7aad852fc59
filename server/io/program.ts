import { readFileSync } from 'node:fs';

const packageJson = new URL('../../package.json', import.meta.url);
const { name, version, homepage } = JSON.parse(readFileSync(packageJson, 'utf8')) as {
  name: string;
  version: string;
  homepage?: string;
};

/** This program's version, as package.json and CHANGELOG.md have it. */
export const VERSION = version;

/** How the program names itself to servers that it asks: name, version, and the project's address where package.json has one. */
export const USER_AGENT = `${name}/${version}${homepage === undefined ? '' : ` (+${homepage})`}`;
