import type { Evidence } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import { effectOf, type FoundReason, found, type ReasonCode, weakerOf } from '../tags/reasons.ts';

/** What the tags say of one supply: the evidence so far, and the reasons found on the way. */
export class Judgement {
  evidence: Evidence;
  readonly reasons: FoundReason[] = [];

  constructor(evidence: Evidence) {
    this.evidence = evidence;
  }

  /** Adds a reason; `evidence`, where given, is the most that is left. */
  add(code: ReasonCode, detail = '', evidence?: Evidence): void {
    this.reasons.push(found(code, detail));
    if (evidence !== undefined) this.evidence = weakerOf(this.evidence, evidence);
  }

  /** Adds a reason against the supply; where that weakens, no more than doubt is left. */
  against(code: ReasonCode, detail = ''): void {
    this.add(code, detail, effectOf(code) === 'advises' ? undefined : 'doubtful');
  }
}

/** "access=private", as it stands in the tags. */
export const asTag = (tags: Tags, key: string): string => `${key}=${tags[key]}`;
