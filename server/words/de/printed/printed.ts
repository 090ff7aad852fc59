import { ENGLISH_PRINTED, type PrintedWords } from '../../en/printed/printed.ts';
import { EXPORT_WORDS } from './export.ts';
import { LINE_WORDS } from './lines.ts';
import { PAPER_WORDS } from './paper/paper.ts';

/** What paper and files to take along print, in German; the rest is the command line's own, which is English. */
export const GERMAN_PRINTED: PrintedWords = {
  ...ENGLISH_PRINTED,
  lines: LINE_WORDS,
  extracts: {
    mapData: (file, date, credit) => `Kartendaten: ${file}, ${date}. ${credit}.`,
    asOf: (date, byUser) => `Stand ${date}${byUser ? ' nach Ihrer Angabe' : ''}`,
    unknownDate: 'Stand unbekannt',
    newestEdit: (date) =>
      `Stand unbekannt, neueste Bearbeitung unter den Versorgungen nahe der Route ${date}`,
    uncredited: 'Die Datei sagt nicht, wessen Daten es sind',
  },
  check: {
    head: 'Vor der Abfahrt nachzuprüfen, zuerst das, ohne das am meisten scheitert',
    none: '- keine Versorgung unterwegs wird benutzt',
    again: (from) => `vor der Abfahrt noch einmal bestätigen, ab ${from}`,
    confirmed: (on, { by, words }) =>
      `bestätigt am ${on}${by === null ? '' : ` durch ${by}`}${words === null ? '' : ` („${words}“)`}`,
    without: (commodity, verdict) => `ohne ${commodity} von dort: ${verdict}`,
    missing: (litres) => `, ${litres} fehlen`,
    more: (count) => `- und ${count} weitere (--json nennt alle)`,
    own: 'Ihre eigene: nachsehen, dass sie da ist',
    neverSeen: 'letzte Bearbeitung nicht bekannt',
    seen: (on) => `zuletzt bearbeitet oder geprüft ${on}`,
  },
  days: {
    ...ENGLISH_PRINTED.days,
    halts: {
      camp: 'Lager',
      pace: 'die Fahrstunden des Tages enden',
      stay: 'Aufenthalt',
      end: 'Ende der Route',
    },
  },
  sheet: {
    ...ENGLISH_PRINTED.sheet,
    day: (first, last) => (first === last ? `Tag ${first}` : `Tag ${first} bis ${last}`),
    between: (earliest, latest) => `${earliest} bis ${latest}`,
  },
  gauge: {
    ...ENGLISH_PRINTED.gauge,
    start: 'Start',
    end: 'Ende',
    unnamed: 'eine Versorgung',
    arriving: (place) => `bis ${place}`,
    leaving: (place, what) => `ab ${place}, ${what} gefüllt`,
    turnBack: (what) => `letzte Stelle zum Umkehren für ${what}`,
  },
  whatIf: {
    ...ENGLISH_PRINTED.whatIf,
    goesTo: (isOn, { place, verdict }) => `${isOn ? 'weiter' : 'zurück'} bis ${place}: ${verdict}`,
    thereWith: (litres) => `dort mit ${litres}`,
    nothingLeft: (place) => `nichts ist übrig bei ${place}`,
    wouldKeep: (litres, cans) => `${litres} mehr (${cans}) hätten die Reserve erhalten`,
    byWayOf: (place) => `über ${place}`,
    backKeeps: (place) => ` Von dort zurück bis ${place} bleibt die Reserve erhalten.`,
    backLacks: (place, litres) => ` Von dort zurück bis ${place} fehlen ${litres} zur Reserve.`,
    lastTurnBack: (place) => ` Letzte Stelle, um mit der Reserve umzukehren: ${place}.`,
    at: (place) => `${place}: `,
  },
  export: EXPORT_WORDS,
  paper: PAPER_WORDS,
};
