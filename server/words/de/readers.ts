import type { GroundRank, InRouteFile, MaybeCutWhy, NoCoverWhy } from '../../core/phrases/readers.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { figure, kmOf, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';
import { counted, german, listed } from './shared/numbers.ts';

/** The sentence with its place in the route's file. */
const inRouteFile = (sentence: Parts, { count, line }: InRouteFile): Parts =>
  parts`${sentence} (Routendatei, ${count > 1 ? 'ab Zeile' : 'Zeile'} ${line})`;

const RANKS: Readonly<Record<GroundRank, string>> = {
  coastline: 'Küstenlinie',
  motorway: 'Autobahnen',
  trunk: 'Fernstraßen',
  primary: 'Hauptstraßen',
  secondary: 'Landstraßen',
  tertiary: 'Nebenstraßen',
  unclassified: 'kleine Straßen',
  track: 'Pisten',
};

const NO_COVER: Readonly<Record<NoCoverWhy, string>> = {
  waypoints: 'enthält Wegpunkte',
  'no-supply': 'zeigt keine Versorgung und ist keine allgemeine Karte',
  incomplete: 'ist unvollständig',
  'no-area': 'gibt keine Grenzen an, und die Objekte darin spannen keine Fläche auf',
};

const MAYBE_CUT: Readonly<Record<MaybeCutWhy, string>> = {
  'no-objects': 'es ist nichts darin',
  'no-nodes': 'es sind Linien oder Relationen darin, aber keiner der Punkte, aus denen sie bestehen',
  'no-ways': 'es sind Punkte darin, die zu Linien gehören, aber keine Linien',
  'no-relations': 'es sind Linien darin, aber keine Relationen',
  'full-block': 'der letzte Block ist voll wie einer aus der Mitte einer Datei',
};

const AGE_UNKNOWN: Readonly<Record<'untold' | 'ahead' | 'absurd', string>> = {
  untold: 'sagt nicht, von wann die Daten sind',
  ahead: 'trägt ein Datum nach heute, das nicht geglaubt wird',
  absurd: 'trägt ein Datum, an dem es eine solche Karte noch nicht gab und das nicht geglaubt wird',
};

const undatedObjects = (count: number): string => {
  if (count === 0) return '';
  return count === 1
    ? ', und eine Versorgung nahe der Route sagt es auch nicht: sie gilt als eine Stufe schlechter bekannt'
    : `, und ${count} der Versorgungen nahe der Route sagen es auch nicht: sie gelten als eine Stufe schlechter bekannt`;
};

/** What is missing from the map's ground. */
function missingGround(missing: readonly GroundRank[], cut: number): string {
  const ranks = missing.map((rank) => `keine ${RANKS[rank]}`);
  const ways = cut === 0 ? [] : [`${counted(cut, 'Weg', 'Wege')} der wichtigsten Art weniger, als es gibt`];
  return listed([...ranks, ...ways]);
}

export const READER_CAUTIONS = {
  'gpx-old': (file) => inRouteFile(parts`Die Datei ist GPX 1.0, eine alte Form`, file),
  'gpx-version': (file) =>
    inRouteFile(parts`Die Datei nennt keine bekannte Fassung von GPX; sie wurde als 1.1 gelesen`, file),
  'gpx-empty-part': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Spur, Route oder Teilstück ohne Punkte', 'Spuren, Routen oder Teilstücke ohne Punkte')} übergangen`,
      file,
    ),
  'gpx-stray-points': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Punkt', 'Punkte')} außerhalb von Teilstücken einer Spur oder Route übergangen`,
      file,
    ),
  'gpx-no-segment': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Punkt steht', 'Punkte stehen')} unmittelbar in einer Spur: als Teilstück genommen`,
      file,
    ),
  'gpx-shape-points': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Punkt einer Erweiterung, der', 'Punkte einer Erweiterung, die')} den Weg zwischen Routenpunkten ${file.count === 1 ? 'formt' : 'formen'}, übergangen: die Route läuft zwischen ihren Punkten gerade`,
      file,
    ),
  'gpx-elevation-unread': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Höhe, die keine Zahl ist', 'Höhen, die keine Zahlen sind')}, übergangen`,
      file,
    ),
  'gpx-longitude-180': (file) =>
    inRouteFile(
      parts`${counted(file.count, 'Punkt', 'Punkte')} auf der Länge 180, die GPX als -180 schreibt`,
      file,
    ),
  'gpx-damaged-text': (file) =>
    inRouteFile(
      parts`Zeichen, die in der Kodierung der Datei nicht gültig sind, durch ein Ersatzzeichen dargestellt (an ${counted(file.count, 'Stelle', 'Stellen')} oder mehr)`,
      file,
    ),
  'age-unknown': ({ source, why, on, objects }) =>
    parts`${source} ${AGE_UNKNOWN[why]}${on === null ? '' : ` (${on})`}${undatedObjects(objects)}. In der Reise angeben, von welchem Tag sie ist (extracts: file und asOf)`,
  'bounds-unusable': ({ source }) =>
    parts`${source} gibt Grenzen an, die kein Rechteck auf der Erde sind; sie wurden nicht verwendet`,
  'bounds-refused': ({ source }) =>
    parts`${source} gibt Grenzen an, die kein Rechteck auf der Erde sind; sie werden nicht verwendet.`,
  'cover-guessed': ({ source }) =>
    parts`${source} gibt keine Grenzen an; dafür gilt die Fläche zwischen den äußersten Objekten. Die Fläche in der Reise angeben, wenn sie bekannt ist`,
  'cover-unvouched': ({ source }) =>
    parts`${source} gibt keine Grenzen an und deckt deshalb nichts ab: die Datei zeigt Versorgungen und sagt nichts darüber, wo keine sind. In der Reise dafür einstehen (extracts: file und hull: true), wenn sie alles zwischen ihren äußersten Objekten zeigt`,
  'cover-none': ({ source, why }) =>
    parts`${source} ${NO_COVER[why]} und deckt deshalb nichts ab: die Datei zeigt Versorgungen und sagt nichts darüber, wo keine sind`,
  'deleted-passed-over': ({ count }) =>
    parts`${counted(count, 'Objekt, das', 'Objekte, die')} die Datei als gelöscht bezeichnet, ${count === 1 ? 'wurde' : 'wurden'} übergangen`,
  'extract-incomplete': ({ source, remark }) =>
    parts`${source} ist unvollständig: der Server, von dem die Datei stammt, bemerkte „${remark}“. Sie gilt als nichts abdeckend; noch einmal laden`,
  'extract-empty': ({ source }) =>
    parts`${source} enthält kein Objekt, das Kraftstoff oder Wasser geben kann.`,
  'extract-off-route': ({ source, corridorM }) =>
    parts`${source} berührt den Korridor der Route (${rounded(kmOf(corridorM), 'km', 9)}) nicht: die Datei wurde gelesen, sagt aber nichts über diese Route. Prüfen, ob es die richtige Gegend ist.`,
  'extract-not-given': ({ file }) =>
    parts`Die Reise spricht von einem Auszug „${file}“, der nicht unter den übergebenen ist: was sie von ihm sagt, wird nicht verwendet`,
  'features-skipped': ({ source, count }) =>
    parts`${counted(count, 'Objekt', 'Objekte')} von ${source} ${count === 1 ? 'war' : 'waren'} nicht zu gebrauchen; ${count === 1 ? 'es ist' : 'sie sind'} als übergangen aufgeführt`,
  'ground-thinned': (facts) =>
    'lesserWays' in facts
      ? parts`die Karte zeigt nur die Hauptstraßen: ${counted(facts.lesserWays, 'kleinerer Weg wurde', 'kleinere Wege wurden')} weggelassen`
      : 'leftOut' in facts
        ? parts`Die Karte lässt ${facts.leftOut} der kleineren Straßen und Pisten der Auszüge weg. Die Rechnung bleibt davon unberührt.`
        : parts`Der Kartengrund aus ${facts.source} zeigt ${missingGround(facts.missing, facts.cut)}: es sind zu viele für eine Karte. Versorgungen sind davon nicht betroffen.`,
  'maybe-cut': ({ source, why }) =>
    parts`${source} ist vielleicht abgeschnitten: ${MAYBE_CUT[why]}. Deshalb deckt die Datei nichts ab: Sie zeigt Versorgungen und sagt nichts darüber, wo keine ist. Noch einmal laden und die Größen vergleichen; ist sie vollständig, in der Reise dafür einstehen (extracts: file und whole: true)`,
  'no-supply-in-waypoints': ({ source, count }) =>
    parts`${count === 1 ? 'der eine Wegpunkt' : `keiner der ${count} Wegpunkte`} von ${source} sagt${count === 1 ? ' nicht' : ''}, dass er Kraftstoff oder Wasser ist`,
  'osm-version-missing': ({ source }) =>
    parts`${source} sagt nicht, welche Fassung des OSM-Formats es ist; gelesen als 0.6`,
  'pbf-foreign-blob': ({ source, count }) =>
    parts`${source} enthält ${counted(count, 'Block', 'Blöcke')} einer Art, die keine Kartendaten sind; übergangen.`,
  'placed-roughly': ({ count, ids }) =>
    parts`${counted(count, 'Versorgung liegt', 'Versorgungen liegen')} dort, wo das ist, was die Auszüge von ${count === 1 ? 'ihr' : 'ihnen'} enthalten, denn Teile fehlen: ${ids.join(', ')}${count > ids.length ? ' und andere' : ''}`,
  'position-missing': ({ count }) =>
    parts`${counted(count, 'Versorgung hat keine brauchbare Lage und wurde', 'Versorgungen haben keine brauchbare Lage und wurden')} übergangen`,
} satisfies Partial<Catalogue['cautions']>;

const PARTS = { nodes: 'Punkte', members: 'Mitglieder' } as const;

const degrees = (value: number | string | undefined) =>
  typeof value === 'number' ? figure(value, 'count') : german(String(value));

/** Why an object was passed over. */
export const READER_PHRASES = {
  'skipped-no-position': () => parts`es hat keine Lage`,
  'skipped-off-earth': ({ lat, lon }) =>
    parts`es liegt nicht auf der Erde: Breite ${degrees(lat)}, Länge ${degrees(lon)}`,
  'skipped-no-parts': (facts) => parts`es hat keine ${PARTS[facts.parts]}`,
  'skipped-parts-missing': (facts) =>
    parts`${facts.parts === 'nodes' ? 'keiner' : 'keines'} der ${PARTS[facts.parts]}, aus denen es besteht, ist im Auszug`,
  'skipped-members-apart': ({ spreadM }) =>
    parts`seine Mitglieder liegen etwa ${rounded(kmOf(spreadM), 'km', 0)} auseinander, so dass kein einzelner Ort dafür steht`,
  'skipped-outline': ({ of }) => parts`es ist der Umriss von ${of}, das dieselben Tags hat`,
  'skipped-newer-elsewhere': ({ source }) =>
    parts`${source} hat eine neuere Fassung davon, die keine Versorgung mehr ist`,
  'skipped-newer-in-file': () =>
    parts`eine neuere Fassung in derselben Datei ist gelöscht oder keine Versorgung mehr`,
  'skipped-no-placed-members': () => parts`eine Relation ohne Punkte oder Linien unter ihren Mitgliedern`,
  'skipped-deleted': () => parts`in der Datei als gelöscht bezeichnet`,
  'skipped-block-off-earth': ({ lat, lon }) =>
    parts`Lage nicht auf der Erde (Länge ${degrees(lon)}, Breite ${degrees(lat)})`,
  'skipped-no-geometry': () => parts`es hat keine Geometrie`,
  'skipped-geometry-type': ({ type }) => parts`eine Geometrie der Art ${type} steht für keinen einzelnen Ort`,
  'skipped-misshapen': () => parts`seine Koordinaten sind nicht angeordnet, wie GeoJSON es verlangt`,
  'skipped-feature-off-earth': ({ lon, lat }) =>
    parts`es liegt nicht auf der Erde: Länge ${degrees(lon)}, Breite ${degrees(lat)}`,
  'skipped-empty-geometry': () => parts`seine Geometrie ist leer`,
  'skipped-no-feature': () => parts`es ist kein Objekt (Feature) von GeoJSON`,
  'skipped-no-tags': () => parts`es hat keine Tags`,
  'skipped-no-supply': () => parts`seine Tags nennen keine Versorgung mit Kraftstoff oder Wasser`,
  'skipped-no-place': () => parts`es hat keinen Ort auf der Erde: keine Koordinaten, oder unmögliche`,
  'skipped-denied-waypoint': ({ source }) =>
    parts`dieser Wegpunkt von ${source} spricht von einer Versorgung und nimmt sie zurück`,
} satisfies Partial<Catalogue['phrases']>;
