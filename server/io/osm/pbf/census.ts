import type { OsmType, RawElement } from '../raw-extract.ts';
import { lowerBound, type Sought } from './find.ts';
import type { Frame } from './framing.ts';
import { type IdSpan, mayRepeat } from './id-span.ts';
import type { Job } from './jobs.ts';

/** Which ids each blob of the file can hold. */
export class Census {
  readonly #blobs: { frame: Frame; spans: Record<OsmType, IdSpan> }[] = [];

  add(frame: Frame, spans: Record<OsmType, IdSpan>): void {
    this.#blobs.push({ frame, spans });
  }

  count(type: OsmType): number {
    return this.#blobs.reduce((sum, blob) => sum + blob.spans[type].count, 0);
  }

  /** Whether an id of this type can occur twice in the file. */
  mayRepeat(type: OsmType): boolean {
    return mayRepeat(this.#blobs.map((blob) => blob.spans[type]));
  }

  framesWith(type: OsmType): Frame[] {
    return this.#blobs.filter((blob) => blob.spans[type].count > 0).map((blob) => blob.frame);
  }

  /** Jobs for those blobs that can hold one of the ids. */
  *findJobs(ids: Readonly<Record<OsmType, ReadonlySet<number>>>): Generator<Job> {
    const sorted: Sought = {
      node: ascending(ids.node),
      way: ascending(ids.way),
      relation: ascending(ids.relation),
    };
    for (const { frame, spans } of this.#blobs) {
      const within = (type: OsmType) => {
        const { least, greatest } = spans[type];
        const from = lowerBound(sorted[type], least);
        return sorted[type].slice(from, Math.max(from, lowerBound(sorted[type], greatest + 1)));
      };
      const sought = { node: within('node'), way: within('way'), relation: within('relation') };
      if (sought.node.length + sought.way.length + sought.relation.length > 0)
        yield { kind: 'find', frame, sought };
    }
  }
}

const ascending = (ids: ReadonlySet<number>): Float64Array => Float64Array.from(ids).sort();

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
