import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { runCli } from '../cli/run-cli.ts';
import { ROOT } from './imports/modules.ts';

const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const { version, engines } = JSON.parse(read('package.json')) as {
  version: string;
  engines: { node: string };
};

describe('the version', () => {
  it('is the one on top of the changes, and of the lock file', () => {
    expect(/^## (\d+\.\d+\.\d+)/m.exec(read('CHANGELOG.md'))?.[1]).toBe(version);
    const lock = JSON.parse(read('package-lock.json'));
    expect([lock.version, lock.packages[''].version]).toEqual([version, version]);
  });

  it.each(['--version', '-v'])('is printed by drystage %s', async (option) => {
    expect(await runCli(option)).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });
});

describe('the workflow of the forge', () => {
  it("runs the project's own tests on the oldest Node that it is for", () => {
    const { jobs } = parse(read('.github/workflows/ci.yml'));
    const steps = jobs.tests.steps as { run?: string; with?: Record<string, string> }[];
    expect(steps.map(({ run }) => run).filter((run) => run !== undefined)).toEqual(['bash .ci/run']);
    expect(steps.some((step) => step.with?.['node-version-file'] === '.nvmrc')).toBe(true);
    expect(engines.node.startsWith(`>=${read('.nvmrc').trim()}.`)).toBe(true);
  });
});
