import type { Bbox } from '../../../../contract/common.ts';
import type { Caution } from '../../../../core/phrases/cautions.ts';
import { isOnEarth } from '../position.ts';

const isBox = ([west, south, east, north]: Bbox): boolean =>
  isOnEarth(west, south) && isOnEarth(east, north) && south < north && west !== east;

/** The boxes that a file declares to cover; what is no box is told of and left out. */
export class DeclaredBounds {
  readonly #boxes: Bbox[] = [];
  #unusable = 0;

  add(box: Bbox): void {
    if (isBox(box)) this.#boxes.push(box);
    else this.#unusable += 1;
  }

  get any(): boolean {
    return this.#boxes.length > 0;
  }

  get first(): Bbox | null {
    return this.#boxes[0] ?? null;
  }

  /** All but the first: an editor writes one box for each piece that it loaded. */
  get others(): Bbox[] {
    return this.#boxes.slice(1);
  }

  cautions(source: string): Caution[] {
    return this.#unusable === 0 ? [] : [{ code: 'bounds-unusable', facts: { source } }];
  }
}
