import { at } from '../../../../core/lists/at.ts';
import { lowerBound } from '../../../lists/lower-bound.ts';
import type { OsmType, RawElement } from '../../extract/raw-element.ts';
import type { Frame } from '../wire/framing.ts';
import type { Sought } from './find.ts';
import { type IdSpan, mayRepeat } from './id-span.ts';

const TYPES = ['node', 'way', 'relation'] as const satisfies readonly OsmType[];

/** One type's spans, one entry for each blob; plain lists of numbers, since large files have tens of thousands of blobs. */
interface SpanColumns {
  count: number[];
  least: number[];
  greatest: number[];
  rising: boolean[];
}

/** A blob that can hold some of the ids sought, and which. */
export interface Search {
  frame: Frame;
  sought: Sought;
}

const emptyColumns = (): SpanColumns => ({ count: [], least: [], greatest: [], rising: [] });

/** Which ids each blob of the file can hold. */
export class Census {
  readonly #frameStart: number[] = [];
  readonly #blobStart: number[] = [];
  readonly #blobBytes: number[] = [];
  readonly #spans: Record<OsmType, SpanColumns> = {
    node: emptyColumns(),
    way: emptyColumns(),
    relation: emptyColumns(),
  };

  add(frame: Frame, spans: Record<OsmType, IdSpan>): void {
    this.#frameStart.push(frame.frameStart);
    this.#blobStart.push(frame.blobStart);
    this.#blobBytes.push(frame.blobBytes);
    for (const type of TYPES) {
      const columns = this.#spans[type];
      const { count, least, greatest, rising } = spans[type];
      columns.count.push(count);
      columns.least.push(least);
      columns.greatest.push(greatest);
      columns.rising.push(rising);
    }
  }

  #frame(blob: number): Frame {
    return {
      type: 'OSMData',
      frameStart: at(this.#frameStart, blob),
      blobStart: at(this.#blobStart, blob),
      blobBytes: at(this.#blobBytes, blob),
    };
  }

  count(type: OsmType): number {
    return this.#spans[type].count.reduce((sum, count) => sum + count, 0);
  }

  /** Objects of all types in each blob, in the file's order. */
  blobCounts(): number[] {
    return this.#frameStart.map((_, blob) =>
      TYPES.reduce((sum, type) => sum + at(this.#spans[type].count, blob), 0),
    );
  }

  /** Whether an id of this type can occur twice in the file. */
  mayRepeat(type: OsmType): boolean {
    return mayRepeat(this.#frameStart.map((_, blob) => this.#span(type, blob)));
  }

  #span(type: OsmType, blob: number): IdSpan {
    const { count, least, greatest, rising } = this.#spans[type];
    return {
      count: at(count, blob),
      least: at(least, blob),
      greatest: at(greatest, blob),
      rising: at(rising, blob),
    };
  }

  framesWith(type: OsmType): Frame[] {
    return this.#spans[type].count.flatMap((count, blob) => (count > 0 ? [this.#frame(blob)] : []));
  }

  /** Those blobs that can hold one of the ids, which are ascending. */
  *searches(sorted: Sought): Generator<Search> {
    for (let blob = 0; blob < this.#frameStart.length; blob += 1) {
      const sought = {
        node: this.#within('node', blob, sorted.node),
        way: this.#within('way', blob, sorted.way),
        relation: this.#within('relation', blob, sorted.relation),
      };
      if (sought.node.length + sought.way.length + sought.relation.length > 0)
        yield { frame: this.#frame(blob), sought };
    }
  }

  /** Those of the ascending ids that the blob can hold. */
  #within(type: OsmType, blob: number, sorted: Float64Array): Float64Array {
    const { least, greatest } = this.#span(type, blob);
    const from = lowerBound(sorted, least);
    return sorted.slice(from, Math.max(from, lowerBound(sorted, greatest + 1)));
  }
}

/** Objects by type and id, each in its newest version; of equal versions the one added last. */
export class Newest {
  readonly #byType: Record<OsmType, Map<number, RawElement>> = {
    node: new Map(),
    way: new Map(),
    relation: new Map(),
  };

  add(element: RawElement): void {
    const known = this.#byType[element.type];
    const other = known.get(element.id);
    if (other === undefined || (element.version ?? 0) >= (other.version ?? 0)) known.set(element.id, element);
  }

  get(type: OsmType, id: number): RawElement | undefined {
    return this.#byType[type].get(id);
  }

  all(type: OsmType): Iterable<RawElement> {
    return this.#byType[type].values();
  }
}
