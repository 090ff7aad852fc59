import { GERM_CLASSES, type GermClass, type Logs, type NamedTarget } from '../../../contract/treatment.ts';

export const NO_LOGS: Logs = { bacteria: 0, viruses: 0, protozoa: 0 };

/** Float noise of adding logs must not make a line miss its target. */
const SLACK = 1e-9;

/**
 * What a line must take out, log10 of each class.
 * `purifier`: EPA Task Force, Guide Standard and Protocol for Testing Microbiological Water Purifiers (1986, rev. 1987):
 * 6, 4, 3. `two-star`, `three-star`: WHO, Evaluating household water treatment options (2011); figures from memory.
 */
export const TARGETS: Record<NamedTarget, Logs> = {
  purifier: { bacteria: 6, viruses: 4, protozoa: 3 },
  'two-star': { bacteria: 2, viruses: 3, protozoa: 2 },
  'three-star': { bacteria: 4, viruses: 5, protozoa: 4 },
};

/** Log10 reduction of a share stopped, in percent below 100: 94 % is 1.22 log (arithmetic). */
export const logOfPercent = (percent: number): number => -Math.log10(1 - percent / 100);

/** Share stopped by a log10 reduction, percent: 3 log are 99.9 % (arithmetic). */
export const percentOfLog = (log: number): number => 100 * (1 - 10 ** -log);

/** Logs of stages that work independently add; the sum is credited up to `maximumLog`. */
export function sumLogs(parts: readonly Logs[], maximumLog: number): Logs {
  const sumOf = (germs: GermClass) =>
    Math.min(
      maximumLog,
      parts.reduce((sum, part) => sum + part[germs], 0),
    );
  return { bacteria: sumOf('bacteria'), viruses: sumOf('viruses'), protozoa: sumOf('protozoa') };
}

/** The classes in which `logs` fall short of `target`, and by how much. */
export function lacksOf(logs: Logs, target: Logs): { germs: GermClass; log: number }[] {
  return GERM_CLASSES.map((germs) => ({ germs, log: target[germs] - logs[germs] })).filter(
    ({ log }) => log > SLACK,
  );
}
