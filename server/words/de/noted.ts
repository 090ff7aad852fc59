import type { SaidBy, SupplyFindings } from '../../core/phrases/supply.ts';
import { type Parts, parts } from '../parts/part.ts';
import { FUEL_WORDS } from './shared/words.ts';

/** A day, and in brackets who said it and in which words: `2027-03-01 (Ann, Telefon 555 123: „bis sechs“)`. */
export function noted({ on, ...said }: SaidBy & { readonly on: string }): Parts {
  const source = sourceWords(said);
  return source === '' ? parts`${on}` : parts`${on} (${source})`;
}

function sourceWords({ by, phone, words }: SaidBy): string {
  const who = [...(by === undefined ? [] : [by]), ...(phone === undefined ? [] : [`Telefon ${phone}`])].join(
    ', ',
  );
  if (words === undefined) return who;
  return who === '' ? `„${words}“` : `${who}: „${words}“`;
}

/** A day, and until when what was said on it held. */
export function expiry(finding: SupplyFindings['confirmation-expired']): Parts {
  const { on } = finding;
  return 'days' in finding
    ? parts`${on}, gilt ${finding.days} Tage`
    : parts`${on}, gilt bis ${finding.until}`;
}

const GRADES = { drinking: 'trinkbar', treatable: 'aufzubereiten', washing: 'nur zum Waschen' } as const;

/** What was corrected, on what day and by whose word. */
export function correction({ fuels, grade, hours, ...note }: SupplyFindings['corrected']): Parts {
  const facts = [
    ...(fuels === undefined ? [] : [`verkauft ${fuels.map((fuel) => FUEL_WORDS[fuel]).join(', ')}`]),
    ...(grade === undefined ? [] : [`das Wasser ist ${GRADES[grade]}`]),
    ...(hours === undefined ? [] : [`Öffnungszeiten ${hours}`]),
  ];
  return parts`${facts.length === 0 ? 'das Telefon' : facts.join(', ')}, am ${noted(note)}`;
}
