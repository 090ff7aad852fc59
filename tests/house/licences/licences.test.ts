import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../imports/modules.ts';
import { isAllowed, lockedPackages } from './licences.ts';

describe('the licences of what is installed', () => {
  it('are all on the list', () => {
    const all = lockedPackages(JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')));
    expect(all.length).toBeGreaterThan(300);
    expect(all.filter(({ licence }) => !isAllowed(licence))).toEqual([]);
  });

  it('are read from the lock file, of packages inside others too', () => {
    const packages = {
      '': { version: '1.0.0' },
      'node_modules/b': { version: '1.0.0', license: 'MIT' },
      'node_modules/b/node_modules/@x/a': { version: '2.0.0', dev: true },
    };
    expect(lockedPackages({ packages })).toEqual([
      { name: '@x/a', version: '2.0.0', licence: 'none named', dev: true },
      { name: 'b', version: '1.0.0', licence: 'MIT', dev: false },
    ]);
  });

  it.each([
    ['MIT', true],
    ['(EDL-1.0 OR EPL-1.0)', true],
    ['(LGPL-2.0 or MIT)', true],
    ['LGPL-3.0-only', true],
    ['GPL-3.0-only', false],
    ['MIT AND GPL-3.0-only', false],
    ['(GPL-2.0 OR AGPL-3.0)', false],
    ['UNLICENSED', false],
    ['none named', false],
  ])('%s: %s', (licence, allowed) => {
    expect(isAllowed(licence)).toBe(allowed);
  });
});
