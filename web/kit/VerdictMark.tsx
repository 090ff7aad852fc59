import type { ReactNode } from 'react';
import type { Verdict } from '../../server/contract/common.ts';
import { VERDICT_WORDS } from '../words/words.ts';

/** A verdict as a mark that does not depend on hue: plain bold, dashed underline, filled, dotted frame. */
export function VerdictMark({ verdict, children }: { verdict: Verdict; children?: ReactNode }) {
  return <span className={`verdict verdict-${verdict}`}>{children ?? VERDICT_WORDS[verdict]}</span>;
}
