import type { PrintedWords } from '../../en/printed/printed.ts';
import { listed } from '../shared/numbers.ts';
import { COMMODITY_WORDS, EVIDENCE_WORDS } from '../shared/words.ts';

/** What all reports have in common. Figures come in as they are set. */
export const LINE_WORDS: PrintedWords['lines'] = {
  verdicts: {
    enough: 'reicht',
    'into-reserve': 'an die Reserve',
    short: 'geht aus',
    unknown: 'nicht bekannt',
  },
  evidence: EVIDENCE_WORDS,
  commodities: COMMODITY_WORDS,
  commodity: (name) => COMMODITY_WORDS[name],
  both: (names) => listed(names.map((name) => COMMODITY_WORDS[name])),
  km: (figure) => `${figure} km`,
  litres: (figure) => `${figure} l`,
  hours: (figure) => `${figure} h`,
  atKm: (figure) => `km ${figure}`,
  days: (figure) => (figure === '1' ? '1 Tag' : `${figure} Tage`),
  partWithoutData: (verdict) => `${verdict}, zum Teil ohne Daten`,
  cans: (count) => `${count} Kanister`,
  place: (name, at) => `${name} (${at})`,
  unnamedPlaces: { start: 'Start', end: 'Ende', passing: 'eine Versorgung' },
  noTelephone: 'kein Telefon bekannt',
  telephone: (number) => `Telefon ${number}`,
  openHours: (hours) => `Öffnungszeiten ${hours}`,
};
