export { plain } from '../../../core/input/unseen.ts';

/** Text cut to a width, with a sign that it was. */
export function shortened(text: string, width: number): string {
  const characters = [...text];
  return characters.length <= width ? text : `${characters.slice(0, width - 1).join('')}…`;
}
