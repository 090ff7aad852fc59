import type { PaperWords } from '../../../en/printed/paper/paper.ts';
import { column } from '../../../en/printed/shared/columns.ts';
import { COMMODITY_WORDS } from '../../shared/words.ts';

/** Words of the tables and lists of the sheet. Figures come in as they are set. */
export const TABLE_WORDS: PaperWords['tables'] = {
  trouble: {
    columns: {
      stretch: column('von, bis'),
      of: column('was'),
      verdict: column('ist'),
      length: column('Länge', 'km'),
      need: column('Bedarf', 'l'),
      reserve: column('Reserve', 'l'),
      missing: column('fehlt', 'l'),
      dry: column('leer bei', 'km'),
    },
    stretch: (from, to) => `${from} bis ${to}`,
    rest: (count) =>
      count === 1 ? 'Und 1 weiterer Abschnitt, er reicht.' : `Und ${count} weitere Abschnitte, alle reichen.`,
    more: (count, verdict) => `Und ${count} weitere: ${verdict}.`,
    withoutPlan: 'Wie die Route ist, mit vollen Tanks an jeder Versorgung, die zählt, und leeren Kanistern.',
    ofPlan: 'Des Plans.',
  },
  stops: {
    columns: {
      number: column('Nr.'),
      at: column('bei', 'km'),
      place: column('Halt, Koordinaten, wen fragen'),
      of: column('was'),
      arrive: column('an', 'l'),
      fill: column('füllen', 'l'),
      leave: column('ab', 'l'),
      next: column('nächster'),
      back: column('zurück vor', 'km'),
    },
    start: 'Start',
    end: 'Ende',
    point: (lat, lon) => `${lat}, ${lon}`,
    north: 'N',
    south: 'S',
    east: 'E',
    west: 'W',
    telephone: (number) => `Telefon ${number}`,
    noTelephone: 'kein Telefon verzeichnet',
    hours: (hours) => `Öffnungszeiten ${hours}`,
    noHours: 'Öffnungszeiten nicht bekannt',
    open: 'dann offen',
    shut: 'zu einem Teil dieser Zeit geschlossen',
    own: 'Ihre eigene: nachsehen, dass sie da ist',
    off: (length) => `${length} abseits der Route`,
    most: (litres) => `nicht mehr als ${litres} zu bekommen`,
    into: (litres, into) => `${litres} in ${into}`,
    letGo: (litres, from) => `${litres} ablassen: ${from}`,
    tanks: 'die Tanks',
    cans: (count) => `${count} Kanister`,
    withCans: (count) => (count === 1 ? '1 Kanister voll' : `${count} Kanister voll`),
    pour: (places) => `umfüllen bei ${places}`,
    next: (name, length) => `${name} in ${length}`,
    notKnown: 'nicht bekannt, ob es reicht',
    none: 'keine',
    nothing: '0',
    passed: (count) =>
      count === 1
        ? 'Der Plan fährt an 1 weiteren Versorgung, die zählt, vorbei.'
        : `Der Plan fährt an ${count} weiteren Versorgungen, die zählen, vorbei.`,
    shortened:
      'Wo kein Telefon steht, ist keines verzeichnet, wo keine Öffnungszeiten stehen, sind sie nicht bekannt; die Tage stehen unten.',
    supplies: 'Die Versorgungen zu beiden Seiten dieser Abschnitte',
    times: 'Tage und Zeiten lassen Umwege, Füllen und Warten auf dem Weg davor weg.',
    rounding:
      'Womit man ankommt, ist abgerundet, was zu füllen ist und womit man abfährt, aufgerundet; Stellen zum Umkehren abgerundet.',
  },
  gauge: {
    columns: {
      at: column('bei', 'km'),
      place: column('Stelle'),
      on: (commodity) => column(`${COMMODITY_WORDS[commodity]}: weiter`, 'l'),
      onGauge: column('Anzeige, volle Kanister'),
      back: column('zurück', 'l'),
      backGauge: column('Anzeige'),
      planned: column('geplant', 'l'),
    },
    bases: {
      plan: 'Nach dem Plan. Alles Nutzbare, Kanister und Reserve eingeschlossen; was gebraucht wird, ist aufgerundet, was geplant ist, abgerundet.',
      gaps: 'Es gibt keinen Plan: mit vollen Tanks an jeder Versorgung, die zählt. Alles Nutzbare, Reserve eingeschlossen; aufgerundet.',
    },
    eighths: (commodities, cans) =>
      `Anzeige für ${commodities}: Achtel dessen, was eingefüllt ist, auch des nicht Nutzbaren${cans ? ', neben so vielen vollen Kanistern, wie der Plan dort hat' : ''}. Zwischen zwei Zeilen gilt die erste für das Weiterfahren, die zweite für das Zurückfahren.`,
    noGauge: (commodities) =>
      `${commodities} in mehreren Tanks oder keinem: keine einzelne Anzeige zeigt es, nach den Zahlen gehen.`,
    every: (length, printed) => `Eine Zeile alle ${length}; der Befehl plan druckt eine alle ${printed}.`,
    mark: (eighths) =>
      eighths === 0
        ? 'leer'
        : eighths === 8
          ? 'voll'
          : eighths === 4
            ? '1/2'
            : eighths % 2 === 0
              ? `${eighths / 2}/4`
              : `${eighths}/8`,
    beyond: '> voll',
    dry: 'leer',
    leftOut:
      'Für jede Stelle eine Zeile wären zu viele: womit man ankommt und abfährt, steht bei den Halten, der Befehl plan druckt alle Zeilen.',
    withCans: (mark, cans) => (cans === 0 ? mark : `${mark} + ${cans}`),
    noWay: 'kein Weg',
  },
  days: {
    columns: {
      day: column('Tag'),
      date: column('Datum'),
      stretch: column('von, bis', 'km'),
      drive: column('Fahrt', 'h'),
      night: column('Nacht bei'),
    },
    undated: '',
    stretch: (from, to) => `${from} bis ${to}`,
    more: (count) => `Und ${count} ${count === 1 ? 'weiterer Tag' : 'weitere Tage'}.`,
    notAllListed: 'Die Fahrt dauert länger als die aufgeführten Tage.',
  },
  whatIfs: {
    all: (count) => `Nichts von den ${count} versuchten Fällen braucht mehr, als da ist.`,
    borne: (count) =>
      count === 1
        ? '1 weiterer wurde versucht und wird mit der Reserve verkraftet.'
        : `${count} weitere wurden versucht und werden mit der Reserve verkraftet.`,
    safe: 'Es gibt einen Plan, der den Ausfall eines jeden einzelnen Halts verkraftet: siehe den Befehl plan.',
    notSafe: 'Kein Plan verkraftet den Ausfall eines jeden einzelnen Halts.',
  },
  check: {
    none: 'Keine Versorgung unterwegs wird benutzt.',
    more: (count) => `Und ${count} weitere nachzuprüfen: der Befehl plan und die Seite nennen alle.`,
  },
  cautions: {
    more: (count) => `Und ${count} weitere: der Befehl plan und die Seite nennen alle.`,
    stretch: (from, to) => `${from} bis ${to}: `,
    spot: (place) => `${place}: `,
  },
};
