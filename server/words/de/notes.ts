import type { ChangedTag, Direction, NearSupply } from '../../core/phrases/notes.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { figure, kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { noted } from './noted.ts';
import { called } from './shared/places.ts';

const DIRECTIONS: Record<Direction, string> = {
  n: 'nördlich',
  ne: 'nordöstlich',
  e: 'östlich',
  se: 'südöstlich',
  s: 'südlich',
  sw: 'südwestlich',
  w: 'westlich',
  nw: 'nordwestlich',
};

/** "Far pump (node/3), 40 m daneben". */
const nearWords = ({ id, name, offM }: NearSupply): Parts =>
  parts`${name === null ? id : `${name} (${id})`}, ${rounded(offM, 'm', 0)} entfernt`;

const changeWords = ({ key, before, now }: ChangedTag): string =>
  before === null
    ? `${key}=${now} ist neu`
    : now === null
      ? `${key}=${before} ist fort`
      : `${key}=${before} ist jetzt ${now}`;

export const NOTE_CAUTIONS = {
  'confirm-before-leaving': ({ name, on, from }, say) =>
    parts`${called(name, say)} wurde am ${on} bestätigt, lange vor der Abfahrt: es zählt, aber vor der Abfahrt noch einmal bestätigen, ab ${from}.`,
  'route-closed': ({ from, until, ...note }) =>
    parts`Gesperrt${from === undefined ? '' : ` ab ${from}`}${until === undefined ? '' : ` bis ${until}`} (von Ihnen vermerkt am ${noted(note)}): die Route kann hier nicht gefahren werden, wie sie ist. Einen anderen Weg suchen, oder eine andere Zeit.`,
  'note-object-gone': ({ id, on, near }) =>
    parts`Was Sie am ${on} über ${id} vermerkt haben, findet auf der Karte keine solche Versorgung mehr${near === null ? '' : parts`; nahe der Stelle: ${nearWords(near)}`}: nachsehen, was daraus geworden ist, und es neu vermerken.`,
  'note-object-moved': ({ id, name, on, movedM }) =>
    parts`${name ?? id} steht ${rounded(movedM, 'm', 0)} von der Stelle, an der es war, als Sie am ${on} etwas darüber vermerkten: nachsehen, ob es dasselbe ist.`,
  'note-object-changed': ({ id, name, on, changes }) =>
    parts`${name ?? id} wurde auf der Karte geändert, seit Sie am ${on} etwas darüber vermerkten: ${changes.map(changeWords).join(', ')}. Nachsehen, ob Ihr Vermerk noch gilt.`,
  'note-new-nearby': ({ id, name, on, near }) =>
    parts`Seit Sie am ${on} etwas über ${name ?? id} vermerkten, ist eine neue Versorgung hinzugekommen: ${nearWords(near)}. Es kann dieselbe sein.`,
  'closed-off-route': ({ atM }) =>
    parts`Ein gesperrtes Stück bei ${placeAt(atM)} liegt nach dem Ende der Route.`,
} satisfies Partial<Catalogue['cautions']>;

export const NOTE_PHRASES = {
  'coordinate-two-wanted': () => parts`zwei Koordinaten, Breite und Länge, wurden nicht gefunden`,
  'coordinate-mixed-up': () =>
    parts`Grad, Minuten und Sekunden stehen nicht in dieser Reihenfolge, jede unter 60 und nur die letzte mit Dezimalen`,
  'coordinate-one-letter': () => parts`nur eine der beiden hat einen Buchstaben für ihre Himmelsrichtung`,
  'coordinate-same-axis': () => parts`beide sind Breiten, oder beide sind Längen`,
  'coordinate-comma-unclear': () => parts`ein Komma kann vor Dezimalen stehen oder zwischen den beiden`,
  'coordinate-letter-unclear': ({ letter }) =>
    parts`„${letter}“ ist in manchen Sprachen Westen und in anderen Osten`,
  'coordinate-not-read': ({ character }) => parts`„${character}“ gehört nicht in Koordinaten`,
  'coordinate-latitude-beyond': ({ degrees }) =>
    parts`eine Breite von ${figure(degrees, 'count')} Grad, die zuerst kommt`,
  'coordinate-longitude-beyond': ({ degrees }) => parts`eine Länge von ${figure(degrees, 'count')} Grad`,
  'noted-by-you': (note) => parts`von Ihnen vermerkt am ${noted(note)}`,
  'supply-where': ({ kind, atM, near }, say) =>
    parts`${say(kind)}, ${placeAt(atM, 0)}${near === null ? [] : parts`, ${rounded(kmOf(near.offM), 'km')} ${DIRECTIONS[near.direction]} von ${near.name}`}`,
} satisfies Partial<Catalogue['phrases']>;
