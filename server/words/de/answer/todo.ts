import type { AnswerWords } from '../../en/answer/answer.ts';
import { figure, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, type Parts, parts, type Words } from '../../parts/part.ts';
import type { SaidStretch } from '../../parts/said-place.ts';
import { placed } from './shared.ts';

const strong = (text: string): Words => ({ text, strong: true });

const between = ({ from, to }: SaidStretch): Part[] => parts`von ${placed(from)} bis ${placed(to)}`;

const moreStretches = (more: number): string =>
  `, und noch auf ${more} ${more === 1 ? 'Abschnitt' : 'Abschnitten'}`;

const of = (what: string, stretches: readonly Parts[], more: number): Part[] =>
  parts`${what}: ${joined(stretches, ', ')}${more > 0 ? `${moreStretches(more)} (siehe die Abschnitte).` : '.'}`;

/** What to do before leaving. `what` is a commodity, inside a sentence; `more` counts the stretches that are not named. */
export const TODO_WORDS: AnswerWords['todo'] = {
  sayOnward: () => parts`Angeben, wie weit es vom Ende der Route bis zur nächsten Versorgung ist.`,
  leaveFull: (allHolds) =>
    parts`Mit allem voll abfahren${allHolds ? ': jeder Abschnitt reicht mit der Reserve' : ''}. Jede Versorgung vor der Abfahrt nachprüfen.`,
  closed: ({ fromM, toM }) =>
    parts`Einen anderen Weg oder eine andere Zeit suchen: Sie haben die Route als ${strong('gesperrt')} vermerkt von ${placeAt(fromM)} bis ${placeAt(toM)}.`,
  fill: (what, litres) =>
    parts`${what}: vor der Abfahrt noch mindestens ${rounded(litres, 'l')} ${strong('auffüllen')}.`,
  carry: of,
  inNoCan: (what, stretches, more) =>
    parts`${of(what, stretches, more)} Es geht in keinen Kanister: eine andere Versorgung suchen oder einen anderen Weg.`,
  cans: ({ cans, toGet, canL }, stretch) => {
    const size = canL === null ? [] : parts` zu ${figure(canL, 'l')}`;
    const more = toGet > 0 ? `, ${toGet} mehr als vorhanden` : '';
    return parts`${strong(`${cans} Kanister`)}${size} ${between(stretch)}${more}`;
  },
  missing: (litres, stretch) => parts`${rounded(litres, 'l')} fehlen ${between(stretch)}`,
  getData: (what) =>
    parts`Kartendaten besorgen, die etwas über ${what} sagen: einen Auszug der ganzen Gegend (.osm.pbf), nicht einen auf anderes beschnittenen; oder, was Sie kennen, als Wegpunkte der Route markieren.`,
  findOut: (what, { fromM, toM }, more) =>
    parts`Herausfinden, wo es ${what} gibt zwischen ${placeAt(fromM)} und ${placeAt(toM)}${more > 0 ? moreStretches(more) : ''}.`,
};
