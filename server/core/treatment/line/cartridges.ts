import type { Term } from '../../quantity/term.ts';
import type { CartridgeReport } from './report.ts';
import { feedFactor } from './taps.ts';
import { stagesToDrink, type Treatment } from './treatment.ts';

/** Stages without a cartridge or membrane that could be used up. */
const ENDLESS: readonly string[] = ['uv', 'chlorine', 'boiling'];

/**
 * Litres through each cartridge on a trip, against its life. All water is taken to pass all stages: which share leaves
 * the line early is not known, and a cartridge that lasts then lasts anyway.
 */
export function cartridgesOf(line: Treatment, litresPerDay: number, days: number): CartridgeReport[] {
  const upTo = stagesToDrink(line);
  return line.stages.flatMap((stage, index) => {
    if (ENDLESS.includes(stage.kind)) return [];
    const factor =
      index < upTo ? feedFactor(line.stages, index, upTo) : feedFactor(line.stages, index, index + 1);
    const used = litresPerDay * days;
    const litres = used * factor;
    const lifeLitres = stage.lifeLitres ?? null;
    const before = stage.usedLitres ?? 0;
    const drawn: Term = {
      label: { phrase: 'days-at-rate', facts: { days, litresPerDay } },
      value: used,
      unit: 'l',
    };
    const thrown: Term = { label: { phrase: 'thrown-away', facts: {} }, value: litres - used, unit: 'l' };
    return [
      {
        name: stage.name,
        litres,
        lifeLitres,
        leftLitres: lifeLitres === null ? null : lifeLitres - before - litres,
        backwash: stage.backwash ?? false,
        working: factor === 1 ? [drawn] : [drawn, thrown],
      },
    ];
  });
}
