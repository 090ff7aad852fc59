import type { SaidBy, SupplyFindings } from '../../../core/phrases/supply.ts';
import { type Parts, parts } from '../../parts/part.ts';

/** A day, and in brackets who said it and in which words: `2027-03-01 (Ann, telephone 555 123: "till six")`. */
export function noted({ on, ...said }: SaidBy & { readonly on: string }): Parts {
  const source = sourceWords(said);
  return source === '' ? parts`${on}` : parts`${on} (${source})`;
}

function sourceWords({ by, phone, words }: SaidBy): string {
  const who = [
    ...(by === undefined ? [] : [by]),
    ...(phone === undefined ? [] : [`telephone ${phone}`]),
  ].join(', ');
  if (words === undefined) return who;
  return who === '' ? `"${words}"` : `${who}: "${words}"`;
}

/** A day, and until when what was said on it held. */
export function expiry(finding: SupplyFindings['confirmation-expired']): Parts {
  const { on } = finding;
  return 'days' in finding
    ? parts`${on}, holds for ${finding.days} days`
    : parts`${on}, holds until ${finding.until}`;
}
