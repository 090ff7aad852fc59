import type { CabAnswerWords } from '../../en/cab/answer.ts';
import { EVIDENCE_WORDS, FUEL_WORDS } from '../shared/words.ts';

/** What a vehicle on the way can do. */
export const CAB_ANSWER_WORDS: CabAnswerWords = {
  content: (commodity, kind) => (commodity === 'water' ? 'Wasser' : FUEL_WORDS[kind]),

  heads: {
    on: 'Weiterfahren',
    back: 'Umkehren',
    'reserve-on': 'Weiterfahren, auf Kosten der Reserve',
    'reserve-back': 'Umkehren, auf Kosten der Reserve',
    reserve: 'Beide Wege kosten die Reserve',
    unknown: 'Nicht bekannt',
    none: 'Kein Weg ist sicher',
    unread: 'Die Anzeigen ablesen',
  },

  missing: (what, litres) => `${what}: für den Weg nach vorn mit der Reserve fehlen ${litres}.`,
  todo: {
    on: 'Alles, was gebraucht wird, reicht mit der Reserve bis zur nächsten Versorgung.',
    back: 'Was an Bord ist, reicht mit der Reserve zurück, aber nicht weiter.',
    'reserve-on':
      'Es gibt keinen Weg zurück. Langsamer fahren, weniger verbrauchen, bei der ersten Gelegenheit füllen.',
    'reserve-back':
      'Was an Bord ist, reicht nicht bis dorthin. Es reicht zurück, mit weniger als der Reserve.',
    reserve: 'Den Weg wählen, der mehr übrig lässt, langsamer fahren, weniger verbrauchen.',
    unknown: 'Niemand kann von hier aus sagen, ob es weiter reicht. Das nicht für ein Ja nehmen.',
    none: 'Anhalten, solange Wasser und Schatten da sind. Beim Fahrzeug bleiben und jetzt Hilfe rufen.',
    unread: 'Angeben, was die Anzeigen zeigen und wie viele Kanister voll sind.',
  },

  onHeads: {
    enough: 'Weiter: ja',
    'into-reserve': 'Weiter: nur auf Kosten der Reserve',
    short: 'Weiter: nein',
    unknown: 'Weiter: nicht bekannt',
  },

  backHeads: {
    enough: 'Zurück: ja',
    'into-reserve': 'Zurück: nur auf Kosten der Reserve',
    short: 'Zurück: nein',
    unknown: 'Zurück: nicht bekannt',
  },
  backFor: (way) => `Zurück: ja, noch ${way} lang`,
  noWayBack: 'Zurück: nein, der Weg kann nicht zurückgefahren werden',

  /** One way for one commodity. */
  enough: ({ what, name, km }, over, lasts) =>
    `${what} bis ${name}, ${km}: ${over} über der Reserve${lasts === null ? '' : `, reicht für etwa ${lasts}`}.`,
  forDays: (days) => `${days}\u00a0${days === '1' ? 'Tag' : 'Tage'}`,
  intoReserve: ({ what, name, km }, missing, left) =>
    `${what} bis ${name}, ${km}: ${missing} fehlen zur Reserve, dort bleiben ${left}.`,
  short: ({ what, name, km }, missing, dryAt) =>
    `${what} bis ${name}, ${km}: mit der Reserve fehlen ${missing}${dryAt === null ? '' : `, geht aus bei ${dryAt}`}.`,
  unknown: ({ what, name, km }, why) => `${what} bis ${name}, ${km}: nicht bekannt, ${why}.`,
  noBack: (what) => `${what}: der Weg kann nicht zurückgefahren werden.`,
  why: {
    'no-map': 'keine Kartendaten sagen etwas über Versorgungen unterwegs',
    closed: 'ein Stück unterwegs kann gesperrt sein',
    bridge: 'die Route hat dort eine Lücke',
    via: 'die Route ist dort nur eine gerade Linie',
    sparse: 'die Route besteht dort nur aus geraden Linien',
    onward: 'was nach dem Ende der Route kommt, wurde nicht angegeben',
  },
  until: (place, name) => `Vor ${place} kann man noch umkehren bis ${name}.`,
  beyondPlan: (what) =>
    `${what}: zwei Versorgungen hintereinander gaben nichts. So weit rechnet diese Datei nicht.`,
  unread: (what) => `${what}: noch nicht abgelesen.`,
  stale: (what, place) => `${what} wurde bei ${place} abgelesen. Noch einmal ablesen.`,

  rests: 'Das beruht auf',
  restsOn: ({ what, name, km }, evidence) =>
    `${name}, ${km}, mit ${what}${evidence === null ? '' : ` (${evidence})`}`,
  evidence: EVIDENCE_WORDS,
  restsOnPlan: 'einem Verbrauch wie geplant, Halten gefüllt wie geplant',
  restsOnGaps: 'dem Fehlen eines Plans: volle Tanks an jeder Versorgung, die zählt, leere Kanister',
  grades: 'Ein Teil des Wassers ist zum Waschen bestimmt, zu dem Anteil, den der Plan hier hat.',

  help: (hours) => `Hilfe braucht nach der Reise etwa ${hours}\u00a0h.`,
  helpUnknown: 'Wie lange Hilfe braucht, wurde nicht angegeben.',
  waterLasts: (days) =>
    `Alles Wasser an Bord reicht bei hohem Verbrauch etwa ${days}\u00a0${days === '1' ? 'Tag' : 'Tage'}.`,
  neverRation:
    'Trinkwasser niemals rationieren. Anrufen, wer Ihren Plan hat, und die Notrufnummer des Landes.',
  others: 'Andere Versorgungen, die zählen',
  other: (what, name, place) => `${name}, ${what}, ${place}`,
  behind: (way) => `${way} zurück`,
  ahead: (way) => `${way} voraus`,
  offRoad: (way) => `${way} abseits der Straße`,
  notReckoned: 'Ob sie erreicht werden, ist hier nicht gerechnet.',
};
