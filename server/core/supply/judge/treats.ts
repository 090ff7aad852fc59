import type { Evidence, WaterClass } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { FillingTime, WaterFit, WaterLack, WaterRemark } from '../../phrases/rig/treatment-waters.ts';
import type { SaidBy, SupplyReasonCode } from '../../phrases/supply.ts';
import { effectOf, type FoundReason, found } from '../tags/reasons.ts';

/** A water as a treatment line meets it. */
export interface WaterSource {
  /** Its id and those merged into it. */
  ids: readonly string[];
  /** Key of its rule in the table of kinds. */
  ruleKey: string;
  tags: Tags;
}

/** Whether a treatment line makes a water fit to drink. */
export type LineVerdict =
  | { readonly fit: true; readonly as: WaterFit; readonly remarks: readonly WaterRemark[] }
  | { readonly fit: false; readonly lacks: readonly WaterLack[] };

/** What the rig's treatment line and the user's notes make of a water. */
export interface WaterTreated {
  /** What the user noted of salt, and when. */
  salt: 'ok' | 'bad' | 'none';
  saltOn: string | null;
  /** Who said so, as far as that is told. */
  saltSaid?: SaidBy;
  /** Whether the line makes it fit to drink, and what it was reckoned with, or what lacks; null without a line. */
  line: LineVerdict | null;
  /** How long filling takes; null where nothing was noted. */
  filling: FillingTime | null;
  /** Also what is stated fit to drink is treated unless it is confirmed. */
  treatEverything: boolean;
}

export type Treats = (source: WaterSource) => WaterTreated;

/** What a treatment line answers when it is up to the water. */
const MENDED: readonly SupplyReasonCode[] = [
  'untreated',
  'not-controlled',
  'not-stated-fit',
  'fit-on-condition',
  'fit-unclear',
];
/** What no line and no note answers: such water stays what it is. */
const BEYOND: readonly SupplyReasonCode[] = ['not-fit', 'tags-contradict', 'salty', 'minerals-unknown'];

/** What is known of a water while it is judged; `treat` changes it. */
export interface WaterReading {
  evidence: Evidence;
  waterClass: WaterClass | null;
  reasons: FoundReason[];
}

const has = (reading: WaterReading, codes: readonly SupplyReasonCode[]): boolean =>
  reading.reasons.some(({ code }) => codes.includes(code));

/** Applies a treatment line and notes to a reading of a water, after confirmations and age. */
export function treat(reading: WaterReading, treated: WaterTreated): void {
  if (reading.waterClass === null || reading.waterClass === 'none') return;
  if (treated.filling !== null) reading.reasons.push(found('time-to-fill', { detail: treated.filling }));
  noteSalt(reading, treated);
  const { line } = treated;

  const everything =
    reading.waterClass === 'drinking' && treated.treatEverything && reading.evidence !== 'confirmed';
  if (everything) {
    reading.waterClass = 'treatable';
    reading.reasons.push(found('treat-everything', {}));
  }
  if (reading.waterClass !== 'treatable' || line === null || has(reading, BEYOND)) return;
  if (!line.fit) {
    reading.reasons.push(...line.lacks.map((detail) => found('line-lacks', { detail })));
    return;
  }
  reading.reasons = reading.reasons.filter(({ code }) => !MENDED.includes(code));
  reading.reasons.push(found('made-fit', { detail: line.as }));
  reading.reasons.push(...line.remarks.map((detail) => found('treated-as-far-as-known', { detail })));
}

/** A dated note on salt answers, or raises, the doubt about it. */
function noteSalt(reading: WaterReading, { salt, saltOn, saltSaid, line }: WaterTreated): void {
  const note = { on: saltOn ?? '', ...saltSaid };
  const doubted = has(reading, ['salt-unknown']);
  if (salt === 'ok' && doubted && !has(reading, BEYOND)) {
    reading.reasons = reading.reasons.filter(({ code }) => code !== 'salt-unknown');
    // Only the salt made a plain well doubtful: nothing else weakened it.
    const weakened = reading.reasons.some(({ code }) => effectOf(code) !== 'advises');
    if (!weakened && reading.evidence === 'doubtful') reading.evidence = 'implied';
    reading.reasons.push(found('not-stated-fit', {}));
    reading.waterClass = 'treatable';
  }
  if (salt === 'ok') reading.reasons.push(found('salt-noted', note));
  if (salt === 'bad') {
    reading.reasons = reading.reasons.filter(({ code }) => code !== 'salt-unknown');
    // A line that takes out salt was asked with the note before it.
    if (line?.fit === true && !has(reading, BEYOND)) {
      reading.waterClass = 'treatable';
      reading.reasons.push(found('not-stated-fit', {}));
    } else {
      reading.waterClass = 'washing';
      reading.reasons.push(found('salt-found', note));
    }
  }
}
