import type { Catalogue } from '../parts/catalogue.ts';
import { figure, halfUp, placeAt, rounded } from '../parts/figures.ts';
import { type Part, parts } from '../parts/part.ts';
import { called } from './shared/places.ts';

/** "2027-05-03T14:05" as a person writes it. */
const clock = (local: string): string => local.replace('T', ' ');

const arrival = (earliest: string, latest: string): Part[] =>
  earliest === latest ? parts`${clock(earliest)}` : parts`von ${clock(earliest)} bis ${clock(latest)}`;

/** Defaults of the pace. */
export const PACE_PHRASES = {
  'slow-pace': ({ kmPerHour }) => parts`${rounded(kmPerHour, 'km/h')} langsam`,
  'share-of-rig-pace': ({ share }) =>
    parts`das Tempo der Ausrüstung × ${rounded(share, 'count', 9)} (unsere Annahme)`,
} satisfies Partial<Catalogue['phrases']>;

/** Cautions on days, nights and hours. */
export const PACE_CAUTIONS = {
  'camp-twice': ({ atM, withinM }) =>
    parts`Das Lager bei ${placeAt(atM)} liegt keine ${figure(withinM, 'm')} von einem anderen und gilt als dasselbe.`,
  'camp-after-hours-late': ({ askedHours, rigHours }) =>
    parts`Ein Lager nach ${figure(askedHours, 'h')} Fahrt war gewünscht, aber die Ausrüstung fährt ${figure(rigHours, 'h')} am Tag: mit ${figure(rigHours, 'h')} gerechnet. Um länger zu fahren, die Fahrstunden pro Tag der Ausrüstung erhöhen.`,
  'opening-hours-unread': ({ name, hours }, say) =>
    parts`Die Öffnungszeiten von ${called(name, say)} sind nicht lesbar („${hours}“): als unbekannt genommen. Fragen, bevor damit geplant wird.`,
  'opening-hours-unknown': ({ name, earliest, latest, why }, say) =>
    parts`Ob ${called(name, say)} bei der Ankunft offen ist, ${arrival(earliest, latest)}, sagen die verzeichneten Öffnungszeiten nicht${why === null ? '' : ` (${why})`}. Erst fragen.`,
  'shut-on-arrival': ({ name, earliest, latest, wait }, say) => {
    const meanwhile =
      wait === null
        ? parts`in den Tagen danach ist keine Öffnung zu finden`
        : parts`das Warten kostet bis zu ${halfUp(wait.hours, 'h')} und ${halfUp(wait.waterL, 'l')} Wasser`;
    return parts`${called(name, say)} ist als geschlossen verzeichnet zu einem Teil der Zeit, in der Sie ankommen können, ${arrival(earliest, latest)}: ${meanwhile}, oder früher kommen.`;
  },
  'night-may-fall-inside': ({ moreL, emptied }) =>
    parts`Eine Besatzung, die schneller fährt, verbringt auf diesem Abschnitt eine Nacht mehr, ${halfUp(moreL, 'l')} Wasser mehr: dann ${emptied ? 'reicht das Wasser nicht' : 'geht es an die Reserve'}.`,
} satisfies Partial<Catalogue['cautions']>;
