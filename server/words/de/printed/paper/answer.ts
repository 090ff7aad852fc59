import type { Commodity } from '../../../../contract/common.ts';
import type { PaperWords } from '../../../en/printed/paper/paper.ts';
import { listed } from '../../shared/numbers.ts';
import { cansText, COMMODITY_WORDS as SUBJECTS } from '../../shared/words.ts';

const named = (name: string, place: string): string => `${name} (${place})`;

/** Answers to "worüber": no article before a commodity. */
const about = (commodity: Commodity): string => SUBJECTS[commodity];

/** The answer on top of the first page, and what to do. Figures come in as they are set. */
export const ANSWER_WORDS: PaperWords['answer'] = {
  named,
  noPlan: 'Kein Plan hält die Reserve.',
  outOfTime: 'In der verfügbaren Zeit wurde kein Plan gefunden: ob es einen gibt, ist nicht bekannt.',
  closed: (from, to) => `Die Route ist gesperrt von ${from} bis ${to}.`,
  holds: 'Mit diesem Plan bleibt die Reserve auf dem ganzen Weg erhalten.',
  notAllKnown: 'Nicht von allem in diesem Plan ist bekannt, dass es reicht.',

  unmapped: (commodity) => `Keine Kartendaten sagen auf dieser Route etwas über ${about(commodity)}.`,
  getData: (commodity) =>
    `Kartendaten besorgen, die etwas über ${about(commodity)} sagen, bevor nach diesem Plan gefahren wird.`,
  noData: (commodity) =>
    `${SUBJECTS[commodity]}: keine Kartendaten sagen auf dieser Route etwas darüber, weder wo es etwas gibt noch dass es nichts gibt.`,
  openLeg: (commodity, from, to) =>
    `${SUBJECTS[commodity]}: niemand weiß, ob es von ${from} bis ${to} reicht.`,
  pastTheEnd: (commodity) =>
    `${SUBJECTS[commodity]}: nach dem Ende der Route nicht bekannt. Angeben, wie weit die nächste Versorgung ist.`,
  enough: (commodity, length) =>
    `${SUBJECTS[commodity]}: reicht auf dem ganzen Weg; der längste Abschnitt von einer Füllung zur nächsten ist ${length}.`,
  dry: (commodity, place) =>
    `${SUBJECTS[commodity]} geht aus ${place === null ? 'unterwegs' : `bei ${place}`}`,
  intoReserve: (commodity, place) =>
    `${SUBJECTS[commodity]} geht an die Reserve${place === null ? '' : ` bei ${place}`}`,
  unknown: (commodity, from, to) =>
    `${SUBJECTS[commodity]}: ob es von ${from} bis ${to} reicht, ist nicht bekannt`,
  without: (outcome) => `${outcome}, ohne den Plan.`,
  asItIs: (outcome, missing) => `${outcome}${missing === null ? '' : `: ${missing} fehlen`}.`,

  box: 'Das tun',
  get: (cans) =>
    `${listed(cans.map(({ count, commodity }) => cansText(count, commodity)))} mehr besorgen, als vorhanden sind.`,
  fill: (commodity, stops) =>
    stops.length === 0
      ? `${SUBJECTS[commodity]}: kein Halt ist nötig.`
      : `${SUBJECTS[commodity]}: füllen bei ${stops.join(', ')}.`,
  carry: (cans, { commodity, from, to }) =>
    `${cansText(cans, commodity)} voll mitführen von ${from} Richtung ${to}`,
  pour: (places) => `; umfüllen bei ${places}.`,
  pourNone: '; vorher keinen umfüllen.',
  stillFull: (count) => ` ${count} bei der Ankunft noch voll.`,
  moreStops: (count) => `${count} weiteren`,
  moreCarries: (count) =>
    `Und volle Kanister auf ${count} weiteren ${count === 1 ? 'Abschnitt' : 'Abschnitten'}: siehe die Halte.`,
  turnBack: (place, commodity, back) =>
    `Vor ${place} kommt man noch zurück bis ${back}, mit der Reserve an ${SUBJECTS[commodity]}.`,
  moreTurnBacks: (count) =>
    `Und ${count} weitere ${count === 1 ? 'Stelle' : 'Stellen'} zum Umkehren: siehe die Tankanzeige.`,
  telephone: (place) => `Vor der Abfahrt ${place} anrufen: daran hängt das meiste.`,
  see: (place) => `Vor der Abfahrt nachsehen, dass ${place} da ist: daran hängt das meiste.`,
  partlyUnknown: 'Unten lesen, von welchen Abschnitten niemand weiß, ob sie reichen.',

  breaks: 'Woran es scheitert',
  waysOut: 'Was helfen würde, jedes neu gerechnet',
  noWayOut: 'Nichts wurde gefunden, was helfen würde.',
  notAllTried: 'Nicht alles wurde versucht: die Zeit ging aus.',
};
