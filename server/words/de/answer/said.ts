import type { Verdict } from '../../../contract/common.ts';
import type { Doubt } from '../../../core/gaps/course/course.ts';
import type { SpanM } from '../../../core/quantity/span.ts';
import type { AnswerWords } from '../../en/answer/answer.ts';
import { figure, kmOf, placeAt } from '../../parts/figures.ts';
import { type Figure, joined, type Part, parts, type Words } from '../../parts/part.ts';
import type { SaidStretch } from '../../parts/said-place.ts';
import { placed, withoutStop } from './shared.ts';

type Said = AnswerWords['said'];
type Arrival = Parameters<Said['enough']>[0];

const km = (metres: number): Figure => figure(kmOf(metres), 'km');

const where = ({ from, to }: SaidStretch): Part[] =>
  parts`${from.name} bis ${to.name}, ${placeAt(from.atM)} bis ${placeAt(to.atM)}.`;

const between = ({ fromM, toM }: SpanM): Part[] => parts`von ${placeAt(fromM)} bis ${placeAt(toM)}`;

const stressed = (text: string, verdict: Verdict): Words => ({ text, strong: true, verdict });

const left = ({ arriveL, drinking }: Arrival): Part[] =>
  parts`Ankunft mit ${figure(arriveL, 'l')}${drinking ? ' Trinkwasser' : ''}`;

const lasts = (share: number, { figure: needed, unit }: Figure): Part[] =>
  parts`Was an Bord ist, reicht für ${figure(share * needed, unit)} der nötigen ${figure(needed, unit)}, die Reserve aufgebraucht.`;

/** Why nobody knows, by what is not known of the way. */
const WHY_UNKNOWN: Record<Doubt['of'], (span: SpanM) => Part[]> = {
  bridge: (span) => parts`: die Route bricht ab ${between(span)}.`,
  via: (span) =>
    parts`: die Route führt gerade zu einem gewählten Punkt ${between(span)}, nicht der Straße entlang.`,
  sparse: (span) => parts`: die Route gibt gerade Linien an, die längste ${between(span)}, nicht die Straße.`,
  closed: (span) =>
    parts`: Sie haben die Route als gesperrt vermerkt ${between(span)}, und was ein anderer Weg braucht, ist nicht bekannt.`,
  onward: () => parts`: wo nach dem Ende die nächste Versorgung ist, ist nicht angegeben.`,
};

/** What the longest stretch comes to. Places and litres as they are; names come in as they are said. */
export const SAID_WORDS: Said = {
  where,
  worse: (stretch, outcome) => parts`Schlimmer: ${where(stretch)} ${outcome}`,
  manyDetours: (overM, { count, longest }) =>
    parts`Beruht auf ${count} Umwegen von mehr als ${km(overM)}, einfach, der längste ${km(longest.detourM)} bis ${placed(longest)}.`,
  detours: (overM, ends) =>
    parts`Beruht auf Umwegen von mehr als ${km(overM)}, einfach: ${joined(
      ends.map((end) => parts`${placed(end)} ${km(end.detourM)}`),
      ', ',
    )}.`,
  noData: (what) =>
    parts`${stressed(`Kein Auszug sagt auf dieser Route etwas über ${what}`, 'unknown')}: weder wo es etwas gibt noch dass es nichts gibt.`,
  lastsDays: (share, days) => lasts(share, figure(days, 'days')),
  lastsWay: (share, wayM) => lasts(share, km(wayM)),
  enough: (arrival, notes) =>
    parts`${left(arrival)}, ${figure(arrival.marginL, 'l')} über der Reserve.${notes}`,
  intoReserve: (arrival, notes) =>
    parts`${left(arrival)}: ${stressed('geht an die Reserve, um ', 'into-reserve')}${figure(-arrival.marginL, 'l')}.${notes}`,
  runsDry: () => parts`${stressed('Geht unterwegs aus.', 'short')}`,
  runsDryAt: (atM, extraL) =>
    parts`${stressed('Geht aus bei ', 'short')}${placeAt(atM)}. Mit der Reserve fehlen: ${figure(extraL, 'l')}.`,
  nobodyKnows: (why) => parts`${stressed('Niemand weiß es', 'unknown')}${why}`,
  whyUnknown: WHY_UNKNOWN,
  noDataToCross: () =>
    parts`: ein Teil davon ist ohne Kartendaten, und was an Bord ist, reicht nicht hinüber.`,
  acrossNoData: () => parts` Ein Teil davon ist ohne Kartendaten und wird als trocken gerechnet.`,
  straight: (span, factor) =>
    parts` Die Route verläuft gerade ${between(span)}: gezählt × ${String(factor).replace('.', ',')}.`,
  doesNotCount: (place, why) =>
    why === null
      ? parts`${placed(place)} zählt nicht.`
      : parts`${placed(place)} zählt nicht: ${withoutStop(why)}.`,
};
