import { UNIT_CHOICES } from '../../server/words/parts/reader-units.ts';
import { UNIT_PRESETS, type UnitPreset, type UnitSystem, type Units, unitsOf } from './conversions.ts';

export const UNIT_KINDS = Object.keys(UNIT_CHOICES) as (keyof Units)[];
const PRESETS = Object.keys(UNIT_PRESETS) as UnitPreset[];

/** The system that has just these units, by its name; the units where none has. */
export function named(units: UnitSystem): UnitSystem {
  const each = unitsOf(units);
  const same = (preset: UnitPreset) => UNIT_KINDS.every((kind) => UNIT_PRESETS[preset][kind] === each[kind]);
  return PRESETS.find(same) ?? each;
}

/** A choice with one unit taken instead; what is no unit of that kind changes nothing. */
export function withUnit(units: UnitSystem, kind: keyof Units, unit: string): UnitSystem {
  const isChoice = UNIT_CHOICES[kind].some((each) => each === unit);
  return isChoice ? named({ ...unitsOf(units), [kind]: unit }) : units;
}

/** As the browser keeps it: the name of a system, or each unit. */
export const storedUnits = (units: UnitSystem): string =>
  typeof units === 'string' ? units : JSON.stringify(units);

/** What was kept, read back; what is no longer a choice is metric. */
export function unitsFromStored(text: string | null): UnitSystem {
  const preset = PRESETS.find((each) => each === text);
  if (preset !== undefined) return preset;
  const kept = partsOf(text);
  return UNIT_KINDS.reduce<UnitSystem>(
    (units, kind) => withUnit(units, kind, String(kept[kind] ?? '')),
    'metric',
  );
}

function partsOf(text: string | null): Partial<Record<string, unknown>> {
  if (text === null) return {};
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
}
