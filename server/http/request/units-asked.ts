import type { Units } from '../../contract/answers/units.ts';
import { InputProblem } from '../../core/input/problem.ts';
import { UNIT_NAMES, UNIT_PRESETS, unitsFromText } from '../../words/parts/reader-units.ts';

/** The units that a query asks for; metric where it asks for none. Throws InputProblem. */
export function unitsAsked(text: string | undefined): Units {
  if (text === undefined) return UNIT_PRESETS.metric;
  const units = unitsFromText(text);
  if (units !== null) return units;
  throw new InputProblem({
    code: 'request-invalid',
    place: 'units',
    came: `"${text}"`,
    expected: UNIT_NAMES,
    remedy: 'Name a system, or each unit, with commas between',
  });
}
