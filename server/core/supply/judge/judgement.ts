import type { Evidence } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyFindings, SupplyReasonCode } from '../../phrases/supply.ts';
import { effectOf, type FoundReason, found, weakerOf } from '../tags/reasons.ts';

/** What the tags say of one supply: the evidence so far, and the reasons found on the way. */
export class Judgement {
  evidence: Evidence;
  readonly reasons: FoundReason[] = [];

  constructor(evidence: Evidence) {
    this.evidence = evidence;
  }

  /** Adds a reason; `evidence`, where given, is the most that is left. */
  add<Code extends SupplyReasonCode>(
    code: Code,
    finding: SupplyFindings[Code],
    evidence: Evidence = this.evidence,
  ): void {
    this.reasons.push(found(code, finding));
    this.evidence = weakerOf(this.evidence, evidence);
  }

  /** Adds a reason against the supply; where that weakens, no more than doubt is left. */
  against<Code extends SupplyReasonCode>(code: Code, finding: SupplyFindings[Code]): void {
    this.add(code, finding, effectOf(code) === 'advises' ? this.evidence : 'doubtful');
  }
}

/** "access=private", as it stands in the tags. */
const asTag = (tags: Tags, key: string): string => `${key}=${tags[key]}`;

/** What these keys say, as it stands in the tags. */
export const tagged = (tags: Tags, ...keys: readonly string[]): { tags: string[] } => ({
  tags: keys.map((key) => asTag(tags, key)),
});
