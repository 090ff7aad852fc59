import { SKETCHY_FACTOR } from '../../core/gaps/course/even-course.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { fixed, kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { COMMODITY_WORDS } from './shared/words.ts';

export const ROUTE_CAUTIONS = {
  'no-cover': ({ commodity }) =>
    parts`Kein Auszug zeigt hier ${COMMODITY_WORDS[commodity]}: als trocken gerechnet.`,
  'start-assumed-full': ({ commodity }) =>
    parts`Wie viel ${COMMODITY_WORDS[commodity]} am Anfang an Bord ist, wurde nicht angegeben: als voll gerechnet. Angeben, wie viel da ist.`,
  'onward-unknown': () =>
    parts`Wie weit es vom Ende der Route bis zur nächsten Versorgung ist, wurde nicht angegeben. Angeben: 0 km, wenn sie dort ist.`,
  'camp-off-route': (facts) =>
    'pastEndAtM' in facts
      ? parts`Das Lager bei ${placeAt(facts.pastEndAtM)} liegt nach dem Ende der Route und wird weggelassen.`
      : parts`Das Lager „${facts.name ?? 'ohne Namen'}“ ist ${fixed(kmOf(facts.offM), 'km')} abseits der Route und wird weggelassen.`,
  'stay-off-route': ({ atM }) =>
    parts`Ein Aufenthalt bei ${placeAt(atM)} liegt nach dem Ende der Route und wird an ihrem Ende gerechnet.`,
  'laid-off-route': ({ atM }) =>
    parts`Ein Vorrat bei ${placeAt(atM)} liegt nach dem Ende der Route und wird weggelassen.`,
} satisfies Partial<Catalogue['cautions']>;

/** A length as short as it can be read. */
function length(metres: number): Parts {
  if (metres < 1) return parts`weniger als ein Meter`;
  return metres < 1000 ? [rounded(metres, 'm', 0)] : [fixed(kmOf(metres), 'km')];
}

export const LINE_CAUTIONS = {
  bridge: ({ atM, jumpM, sought }) =>
    parts`Die Linie bricht ab bei ${{ place: kmOf(atM), decimals: 1, fixed: true }}: ein Sprung von ${length(jumpM)} ist durch eine gerade Linie überbrückt${sought ? '' : ', auf der keine Versorgung gesucht wird'}`,
  'sparse-steps': ({ steps, longestM, overM }) =>
    parts`${steps} Schritt(e) zwischen Punkten sind länger als ${rounded(kmOf(overM), 'km', 9)}, der längste ${length(longestM)}: dort ist die Linie vielleicht nicht die Straße: sie zählt × ${String(SKETCHY_FACTOR).replace('.', ',')}, und ein Abschnitt, der zu mehr als einem Fünftel aus solchen Schritten besteht oder in dem einer an einem Ende scharf abbiegt, ist bestenfalls nicht bekannt. Ist die Straße dort gerade, das in der Reise angeben (routeIsRoad: true)`,
  ferry: ({ name, hours, isMapped }) =>
    parts`Als Fähre genommen${name === null ? '' : ` (${name})`}: kein Kraftstoff wird verbraucht und nichts darauf gesucht; sie dauert ${rounded(hours, 'h')}${isMapped ? '' : ' (nicht verzeichnet, langsam gerechnet)'}, das Warten auf sie nicht gerechnet`,
  'routes-left-out': ({ tracks, routes }) =>
    parts`Die Datei enthält ${tracks} Spur(en) und ${routes} Route(n): den Spuren wird gefolgt, die Routen sind weggelassen; einen Teil wählen, um einer davon zu folgen`,
} satisfies Partial<Catalogue['cautions']>;
