import { closeSync, openSync } from 'node:fs';
import type { NearGrid } from '../../../../app/near-route.ts';
import type { Bbox } from '../../../../contract/common.ts';
import { openBlock } from '../block/block.ts';
import { type Found, findInBlock, type Sought } from '../find/find.ts';
import { type GroundWay, groundWaysOf } from '../find/ground-ways.ts';
import { IdFilter } from '../find/id-filter.ts';
import { type AroundMemory, aroundSearch } from '../find/near-nodes.ts';
import { type AroundResult, Scanner, type ScanResult, type ScanSettings } from '../find/scan.ts';
import { openBlob } from '../wire/blob.ts';
import { BrokenBlock, pbfProblem } from '../wire/broken.ts';
import { type Frame, readBlobBytes } from '../wire/framing.ts';

/** What is done with one blob. */
export type Job =
  | { kind: 'scan'; frame: Frame }
  | { kind: 'find'; frame: Frame; sought: Sought }
  | { kind: 'ground'; frame: Frame; leastRank: number }
  | { kind: 'around'; frame: Frame };

export interface JobResults {
  scan: ScanResult;
  find: Found;
  ground: GroundWay[];
  around: AroundResult;
}
export type JobResult = JobResults[Job['kind']];

/** What a thread is told once; all of it can be sent. */
export interface JobSettings {
  path: string;
  source: string;
  ground: { box: Bbox; filterMemory: SharedArrayBuffer } | null;
  hull: boolean;
  /** Keep wanted nodes on this land only; null keeps all. */
  near: NearGrid | null;
  /** Note roads and what else there is around the route; null notes nothing. */
  around: AroundMemory | null;
}

/** Does jobs on one file, one after the other; holds the file open until `close`. */
export class JobDoer {
  readonly #settings: JobSettings;
  readonly #fd: number;
  readonly #ground: ScanSettings['ground'];
  readonly #scanner: Scanner;
  #buffer = new Uint8Array(0);

  constructor(settings: JobSettings) {
    this.#settings = settings;
    this.#fd = openSync(settings.path, 'r');
    const { ground } = settings;
    this.#ground =
      ground === null ? null : { box: ground.box, nodesInside: new IdFilter(ground.filterMemory) };
    const around = settings.around === null ? null : aroundSearch(settings.around);
    this.#scanner = new Scanner({ ground: this.#ground, hull: settings.hull, near: settings.near, around });
  }

  close(): void {
    closeSync(this.#fd);
  }

  /** The opened bytes of a blob, valid until the next call. */
  payload(frame: Frame): Uint8Array {
    if (this.#buffer.length < frame.blobBytes) this.#buffer = new Uint8Array(frame.blobBytes);
    const { source } = this.#settings;
    return openBlob(readBlobBytes(this.#fd, frame, this.#buffer, source), frame, source);
  }

  /** @throws InputProblem */
  do(job: Job): JobResult {
    const bytes = this.payload(job.frame);
    try {
      const block = openBlock(bytes);
      if (job.kind === 'scan') return this.#scanner.scan(block);
      if (job.kind === 'around') return this.#scanner.around(block);
      if (job.kind === 'find') return findInBlock(block, job.sought);
      if (this.#ground === null) throw new Error('ground ways asked for without a box');
      return groundWaysOf(block, this.#ground, job.leastRank);
    } catch (error) {
      if (!(error instanceof BrokenBlock)) throw error;
      throw pbfProblem({
        code: 'pbf-broken',
        source: this.#settings.source,
        byte: job.frame.frameStart,
        came: `a block with ${error.message}`,
      });
    }
  }
}
