import { SKETCHY_FACTOR } from '../../core/gaps/course/even-course.ts';
import type { RouteRefusals } from '../../core/phrases/route.ts';
import type { Catalogue, RouteRefusalSayings } from '../parts/catalogue.ts';
import { fixed, kmOf, placeAt, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { counted, german } from './shared/numbers.ts';
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
    parts`${counted(steps, 'Schritt zwischen Punkten ist', 'Schritte zwischen Punkten sind')} länger als ${rounded(kmOf(overM), 'km', 9)}, der längste ${length(longestM)}: dort ist die Linie vielleicht nicht die Straße: sie zählt × ${german(SKETCHY_FACTOR)}, und ein Abschnitt, der zu mehr als einem Fünftel aus solchen Schritten besteht oder in dem einer an einem Ende scharf abbiegt, ist bestenfalls nicht bekannt. Ist die Straße dort gerade, das in der Reise angeben (routeIsRoad: true)`,
  ferry: ({ name, hours, isMapped }) =>
    parts`Als Fähre genommen${name === null ? '' : ` (${name})`}: kein Kraftstoff wird verbraucht und nichts darauf gesucht; sie dauert ${rounded(hours, 'h')}${isMapped ? '' : ' (nicht verzeichnet, langsam gerechnet)'}, das Warten auf sie nicht gerechnet`,
  'routes-left-out': ({ tracks, routes }) =>
    parts`Die Datei enthält ${counted(tracks, 'Spur', 'Spuren')} und ${counted(routes, 'Route', 'Routen')}: den Spuren wird gefolgt, die Routen sind weggelassen; einen Teil wählen, um einer davon zu folgen`,
} satisfies Partial<Catalogue['cautions']>;

/** Names listed in a refusal before it becomes unreadable. */
const LISTED = 12;

const KINDS = { track: 'Spur', route: 'Route' } as const;

function listOf(all: RouteRefusals['part-unknown']['parts']): string {
  const shown = all
    .slice(0, LISTED)
    .map(({ kind, name }, index) => `${index + 1} ${KINDS[kind]} „${name ?? 'ohne Namen'}“`);
  const more = all.length > LISTED ? [`und ${all.length - LISTED} weitere`] : [];
  return [...shown, ...more].join(', ');
}

/** Why no route can be made of a file. */
export const ROUTE_REFUSALS: RouteRefusalSayings = {
  'gpx-no-points': ({ chosen, waypoints }) => ({
    place: null,
    came: chosen ? 'der gewählte Teil hat keine Punkte' : 'keine Spur und keine Route mit Punkten',
    expected: 'eine Spur oder Route mit mindestens zwei Punkten',
    remedy: waypoints
      ? 'Wegpunkte allein sind keine Route: die Spur oder Route selbst ausgeben lassen'
      : 'Die Spur oder Route noch einmal ausgeben lassen und prüfen, dass sie nicht leer ist',
  }),
  'gpx-one-point': ({ points }) => ({
    place: null,
    came: points === 1 ? 'ein einziger Punkt' : `${points} Punkte, alle an derselben Stelle`,
    expected: 'eine Linie aus mindestens zwei Punkten an verschiedenen Stellen',
    remedy: 'Die ganze Spur oder Route ausgeben lassen',
  }),
  'gpx-too-long': ({ mostM }) => ({
    place: null,
    came: `eine Linie von mehr als ${kmOf(mostM)} km`,
    expected: 'eine Route, die gefahren werden kann',
    remedy: 'Einen Teil der Datei wählen, oder nach Punkten suchen, die weit ab von der Route liegen',
  }),
  'part-unknown': ({ wanted, bearers, parts: all }) => ({
    place: 'part',
    came:
      bearers > 1 ? `der Name "${wanted}", den ${bearers} Teile tragen` : `Teil ${JSON.stringify(wanted)}`,
    expected: all.length === 0 ? 'eine Datei mit Spuren oder Routen' : `"all" oder eines von: ${listOf(all)}`,
    remedy:
      bearers > 1
        ? 'Die Nummer des Teils angeben'
        : '"all" angeben, oder eine Nummer oder einen Namen aus dieser Liste',
  }),
};
