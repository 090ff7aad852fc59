import type { Caution } from '../../phrases/cautions.ts';
import type { Passing } from '../../supply/points/passing.ts';

/** Supplies that count by a confirmation made long before the departure, each once. */
export function confirmAgainCautions(passings: readonly Passing[]): Caution[] {
  const told = new Set<string>();
  return passings.flatMap(({ id, name, kind, atM, counts, reasons }): Caution[] => {
    const again = reasons.find((reason) => reason.code === 'confirm-again');
    if (again === undefined || !counts || told.has(id)) return [];
    told.add(id);
    return again.facts.findings.map(({ on, from }) => ({
      code: 'confirm-before-leaving',
      facts: { name: name ?? kind, on, from },
      fromM: atM,
      toM: atM,
    }));
  });
}
