// Prints name, version and licence of every package that the lock file installs; fails on a licence that is not on the list.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../imports/modules.ts';
import { isAllowed, type LockFile, lockedPackages } from './licences.ts';

const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as LockFile;
const all = lockedPackages(lock);
for (const { name, version, licence, dev } of all) {
  console.log(`${`${name}@${version}`.padEnd(56)} ${licence}${dev ? ' (building and testing only)' : ''}`);
}
const refused = all.filter(({ licence }) => !isAllowed(licence));
console.log(
  `\n${all.length} packages, ${all.filter(({ dev }) => !dev).length} of them to run or build the program`,
);
for (const { name, version, licence } of refused) {
  console.error(`${name}@${version}: ${licence} is not on the list in tests/house/licences/licences.ts`);
}
process.exitCode = refused.length === 0 ? 0 : 1;
