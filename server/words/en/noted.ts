import type { SaidBy, SupplyFindings } from '../../core/phrases/supply.ts';
import { type Parts, parts } from '../parts/part.ts';
import { FUEL_WORDS } from './rig/fuel-words.ts';

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

const GRADES = { drinking: 'fit to drink', treatable: 'to be treated', washing: 'for washing only' } as const;

/** What was corrected, on what day and by whose word: "sells diesel (2027-03-01, Ann)". */
export function correction({ fuels, grade, hours, ...note }: SupplyFindings['corrected']): Parts {
  const facts = [
    ...(fuels === undefined ? [] : [`sells ${fuels.map((fuel) => FUEL_WORDS[fuel]).join(', ')}`]),
    ...(grade === undefined ? [] : [`its water is ${GRADES[grade]}`]),
    ...(hours === undefined ? [] : [`hours ${hours}`]),
  ];
  return parts`${facts.length === 0 ? 'its telephone' : facts.join(', ')}, on ${noted(note)}`;
}
