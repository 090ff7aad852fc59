import type { TreatmentReport } from '../../../contract/treatment.ts';
import { feedFactor } from './taps.ts';
import { stagesToDrink, type Treatment } from './treatment.ts';

/** Stages without a cartridge or membrane that could be used up. */
const ENDLESS: readonly string[] = ['uv', 'chlorine', 'boiling'];

/**
 * Litres through each cartridge on a trip, against its life. All water is taken to pass all stages: which share leaves
 * the line early is not known, and a cartridge that lasts then lasts anyway.
 */
export function cartridgesOf(
  line: Treatment,
  litresPerDay: number,
  days: number,
): TreatmentReport['cartridges'] {
  const upTo = stagesToDrink(line);
  return line.stages.flatMap((stage, index) => {
    if (ENDLESS.includes(stage.kind)) return [];
    const factor =
      index < upTo ? feedFactor(line.stages, index, upTo) : feedFactor(line.stages, index, index + 1);
    const used = litresPerDay * days;
    const litres = used * factor;
    const lifeLitres = stage.lifeLitres ?? null;
    const before = stage.usedLitres ?? 0;
    const working = [
      { label: `${Math.round(days * 10) / 10} days at ${litresPerDay} l a day`, value: used, unit: 'l' },
    ];
    if (factor !== 1)
      working.push({ label: 'thrown away by reverse osmosis', value: litres - used, unit: 'l' });
    return [
      {
        name: stage.name,
        litres,
        lifeLitres,
        leftLitres: lifeLitres === null ? null : lifeLitres - before - litres,
        backwash: stage.backwash ?? false,
        working,
      },
    ];
  });
}
