import { InputProblem } from '../input/problem.ts';

/** A log that cannot be used: where in it, what came, what was expected, what to do. The file's name is added above. */
export const logFault = (
  place: string | null,
  came: string,
  expected: string,
  remedy: string,
): InputProblem => new InputProblem({ code: 'log-invalid', source: null, place, came, expected, remedy });

const SHOWN = 40;

/** A cell as it came, in quotes, short. */
export function quoted(text: string): string {
  const characters = [...text];
  return JSON.stringify(characters.length <= SHOWN ? text : `${characters.slice(0, SHOWN - 1).join('')}…`);
}

/** "line 4, litres" */
export const placeOf = (line: number, column: string): string => `line ${line}, ${column}`;
