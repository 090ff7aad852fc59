import type { Reporter, TestCase, TestModule, TestRunEndReason, Vitest } from 'vitest/node';
import { POSTGRES_MARK } from './postgres.ts';
import { REAL_FOLDER, REAL_MARK, realFolderThere } from './real.ts';

const SLOWEST = 10;

/**
 * Closes the run: the slowest ten tests, what became of the tests on real data, and the plain closing line.
 * Fails the run when the real data is there and a test on it did not run, unless tags were to leave it out.
 */
export default class ClosingReporter implements Reporter {
  #leavesOut = false;

  onInit(vitest: Vitest): void {
    this.#leavesOut = (vitest.config.tagsFilter ?? []).length > 0;
  }

  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[], reason: TestRunEndReason): void {
    const cases: TestCase[] = modules.flatMap((module) => [...module.children.allTests()]);
    const stateOf = (test: TestCase) => test.result().state;
    const seconds = (test: TestCase) => (test.diagnostic()?.duration ?? 0) / 1000;

    console.log(`\nslowest ${SLOWEST}:`);
    for (const test of [...cases].sort((a, b) => seconds(b) - seconds(a)).slice(0, SLOWEST)) {
      console.log(`  ${seconds(test).toFixed(2)} s  ${test.module.relativeModuleId}: ${test.fullName}`);
    }

    const real = cases.filter(
      (test) => test.fullName.includes(REAL_MARK) && !(this.#leavesOut && test.tags.length > 0),
    );
    const realRun = real.filter((test) => stateOf(test) === 'passed' || stateOf(test) === 'failed').length;
    if (!realFolderThere) {
      console.log(
        `\nreal data: ${REAL_FOLDER} is not there, so the ${real.length} tests on real data were not run`,
      );
    } else {
      console.log(`\nreal data: ${realRun} of ${real.length} tests on real data ran`);
      if (realRun < real.length && reason !== 'interrupted') {
        console.log('real data: some of these did not run, so this run fails');
        process.exitCode = 1;
      }
    }

    const shared = cases.filter((test) => test.fullName.includes(POSTGRES_MARK));
    const sharedRun = shared.filter((test) => stateOf(test) !== 'skipped').length;
    if (shared.length > 0) {
      const why = / \((.+?)\) > /.exec(shared[0]?.fullName ?? '')?.[1] ?? 'left out';
      console.log(
        sharedRun === 0
          ? `\nPostgreSQL: none could be started (${why}), so the ${shared.length} tests on it were not run`
          : `\nPostgreSQL: ${sharedRun} of ${shared.length} tests on it ran`,
      );
    }

    const passed = cases.filter((test) => stateOf(test) === 'passed').length;
    const failed = cases.filter((test) => stateOf(test) === 'failed').length + errors.length;
    console.log(`\n${passed} passed, ${failed} failed, ${cases.length - passed - failed} skipped`);
  }
}
