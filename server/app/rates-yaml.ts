import type { LogRates } from '../contract/answers/log.ts';
import type { FuelLesson, LogLesson, WaterLesson } from '../core/log/lesson.ts';
import { textOf } from '../words/words-of.ts';

/** A rig file asks for more than nothing. */
const LEAST = 0.01;

/** Rates as a rig file writes them: two decimals, low rounded down and high up (to within a hundred-thousandth). */
function ratesYaml({ low, typical, high }: LogRates): string {
  // A thousandth of the last digit: 15.2 as it comes out of a sum may be 15.200000000000001.
  const down = Math.max(LEAST, Math.floor(low * 100 + 1e-3) / 100);
  const up = Math.max(LEAST, Math.ceil(high * 100 - 1e-3) / 100);
  const middle = Math.min(up, Math.max(down, Math.round(typical * 100) / 100));
  return `{ low: ${down}, typical: ${middle}, high: ${up} }`;
}

/** The lines of a rig file for what a log taught. */
export const lessonYaml = (lesson: LogLesson): string =>
  lesson.kind === 'fuel' ? fuelYaml(lesson) : waterYaml(lesson);

function fuelYaml({ intervals, total, litresPer100Km, observed }: FuelLesson): string {
  const { surface, massKg } = observed;
  const conditions = [
    ...(surface === null ? [] : [`surface: ${surface}`]),
    ...(massKg === null ? [] : [`massKg: ${Math.round(massKg)}`]),
  ];
  const facts = { intervals: intervals.length, km: total.km };
  const remark = textOf({ phrase: 'log-yaml-intervals', facts });
  return [
    'fuel:',
    `  litresPer100Km: ${ratesYaml(litresPer100Km)} # ${remark}`,
    ...(conditions.length === 0 ? [] : [`  observed: { ${conditions.join(', ')} }`]),
    '',
  ].join('\n');
}

function waterYaml({ lines, crew }: WaterLesson): string {
  const range = ratesYaml(crew.litresPerDay);
  const remark = textOf({ phrase: 'log-yaml-lines', facts: { people: crew.people, lines } });
  return [
    'water:',
    `  litresPerDay: ${range} # ${remark}`,
    `# ${textOf({ phrase: 'log-yaml-crew', facts: {} })}`,
    '# crew:',
    `#   observedLitresPerDay: ${range}`,
    '',
  ].join('\n');
}
