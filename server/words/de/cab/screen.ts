import type { CabScreenWords } from '../../en/cab/screen.ts';

const fullCans = (count: number): string => `${count} Kanister voll`;

/** What stands on the screen of a file to take along around its answer. Figures come in as they are set. */
export const CAB_SCREEN_WORDS: CabScreenWords = {
  title: (route) => `${route}, zum Mitnehmen`,
  offline: 'geht ohne Netz',
  view: 'Fahrersicht',
  iAmAt: 'Ich bin bei',
  change: 'Die Stelle ändern',
  nextIn: (name, way) => `${name} in ${way}`,
  lost: 'Keine Antwort für diese Stelle: sie liegt nicht auf der Route.',
  lastTurn: (what) => `Letzte Stelle zum Umkehren für ${what}`,
  kmLabel: 'Stelle auf der Route',
  less: (what) => `Weniger: ${what}`,
  more: (what) => `Mehr: ${what}`,
  ofLength: (length) => `von ${length}`,
  night: 'Rot',
  nightOff: 'Hell',
  nightLabel: 'Rot auf Schwarz, für die Nacht',

  findMe: 'Meine Stelle suchen',
  finding: 'Ihre Stelle wird gesucht…',
  fromPosition: (off) => `nach Position, ${off} abseits der Route`,
  fromHand: 'von Hand eingegeben',
  position: {
    missing: 'Hier ist keine Position zu bekommen. Die Stelle eingeben.',
    refused: 'Die Position wurde verweigert. Die Stelle eingeben, oder sie erlauben.',
    failed: 'Keine Position wurde gefunden. Im Freien versuchen, oder die Stelle eingeben.',
  },
  far: (distance) =>
    `Sie sind ${distance} abseits der Route: keine Stelle von ihr passt. Dafür gibt es keine Antwort.`,
  rough: (distance) => `Die Position ist nur auf ${distance} bekannt. Die Stelle eingeben.`,
  several: 'Die Route kommt hier mehr als einmal vorbei. Welche ist es?',
  place: (place, off) => `${place}, ${off} entfernt`,

  stopHere: (name) => `Bei ${name}`,
  before: 'Noch nicht gefüllt',
  after: 'Gefüllt, es geht weiter',

  gauge: (what) => `${what}, an Bord`,
  notRead: 'nicht abgelesen',
  tapToRead: 'zum Ablesen tippen',
  readAgain: (place) => `abgelesen bei ${place}: noch einmal ablesen`,
  marks: (marks, litres) => `${marks} · ${litres}`,
  mark: (eighths) => EIGHTHS[eighths] ?? '',
  tank: (name) => `Tank ${name}`,
  gaugeStep: (what) => `Anzeige für ${what}, ein Achtel`,
  litreStep: (what, unit) => `${what}, in ${unit}`,
  canStep: (what) => `volle Kanister: ${what}`,
  fullCans,
  planned: (litres) => `Nach dem Plan hier: ${litres}.`,
  lowerMark: 'Zwischen zwei Marken die untere nehmen. Nur volle Kanister zählen.',
  readAt: (place) => `abgelesen bei ${place}`,
  read: (what) => `${what} ablesen`,
  readAll: (what, litres) => `${litres} ${what} an Bord`,

  done: 'Fertig',

  next: 'Als Nächstes',
  pour: (what) => `Einen Kanister umfüllen: ${what}`,
  halt: ({ what, arrive, fill, letGo, leave, cans }) =>
    `${what}: ${[
      ...(arrive === null ? [] : [`ankommen mit ${arrive}`]),
      ...(fill === null ? [] : [`${fill} füllen`]),
      ...(letGo === null ? [] : [`${letGo} ablassen, wegen einer zulässigen Masse`]),
      ...(leave === null ? [] : [`abfahren mit ${leave}`]),
      ...(cans === 0 ? [] : [fullCans(cans)]),
    ].join(', ')}`,
  gaveNothingHead: 'Ein Halt gab nichts?',
  nothingNext: 'Nichts mehr auf dem Weg.',
  call: (phone) => `${phone} anrufen`,
  hours: (hours) => `Öffnungszeiten ${hours}`,
  hoursUnknown: 'Öffnungszeiten nicht bekannt',
  noTelephone: 'kein Telefon verzeichnet',
  gaveNothing: (name, what) => `${name} gab nichts (${what})`,
  without: (name, what) => `Ohne ${what} bei ${name} gerechnet. Rückgängig`,

  kept: 'Was Sie eingeben, bleibt auf diesem Telefon.',
  notKept: 'Dieses Telefon behält keine Eingaben: sie sind fort, wenn die Datei geschlossen wird.',
  noScript:
    'Die Fahrersicht braucht einen Browser von 2022 oder neuer, mit Skripten. Alles, was darunter steht, geht ohne.',
  noPlan: {
    none: 'Es gibt keinen Plan, der die Reserve hält. Was hier steht, nimmt volle Tanks an jeder Versorgung an, die zählt.',
    'out-of-time':
      'Ob es einen Plan gibt, der die Reserve hält, wurde nicht herausgefunden. Was hier steht, nimmt volle Tanks an jeder Versorgung an, die zählt.',
  },
  papers: {
    answer: 'Der Plan in Kürze',
    leftOut: (picture) => `Weggelassen, weil es für einen kleinen Bildschirm zu viel ist: ${picture}.`,
  },
  aid: 'Eine Planungshilfe, keine Garantie. Die Reserve mitführen.',
};

const EIGHTHS = ['leer', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞', 'voll'];
