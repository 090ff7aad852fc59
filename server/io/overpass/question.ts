import type { OverpassQuestion } from '../../contract/answers/overpass.ts';
import type { Bbox } from '../../contract/common.ts';
import type { Interpreter } from './ask.ts';
import { ChunkFolder } from './chunk-folder.ts';
import { digestOf } from './corridor.ts';
import { overpassQuery } from './query.ts';

/** A corridor that is to be asked for. */
export interface Asking {
  interpreter: Interpreter;
  boxes: readonly Bbox[];
  corridorKm: number;
}

/** What would be asked; answers that lie in the folder are not asked for again. */
export async function questionOf(
  { interpreter, boxes, corridorKm }: Asking,
  folder: string,
): Promise<OverpassQuestion> {
  const { address, userAgent } = interpreter;
  const answers = new ChunkFolder(folder, address);
  let answered = 0;
  for (const box of boxes) if (await answers.isAnswered(overpassQuery(box))) answered += 1;
  return {
    address: address.href,
    userAgent,
    corridorKm,
    requests: boxes.length,
    answered,
    boxes: [...boxes],
    query: boxes.slice(0, 1).map(overpassQuery).join(''),
    digest: digestOf(interpreter, boxes),
  };
}
