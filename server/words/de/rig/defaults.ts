import type { UseLevel } from '../../../contract/crew.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, kmOf, rounded } from '../../parts/figures.ts';
import { type Part, parts } from '../../parts/part.ts';
import { SURFACE_WORDS } from '../shared/words.ts';
import { targetWords } from './germs.ts';
import { logsParts } from './treatment-waters.ts';

const KERB_WORDS = { 'full-fuel-no-driver': 'volle Tanks, ohne Fahrer', 'running-order': 'fahrbereit' };

export const LEVEL_WORDS: Record<UseLevel, string> = {
  emergency: 'Notfall',
  basic: 'einfach',
  careful: 'sparsam',
  plenty: 'reichlich',
};

/** Words that a file has in place of what it does not tell; what stands in no list is the file's own. */
const FILE_WORDS: Readonly<Record<string, string>> = {
  ...SURFACE_WORDS,
  ...LEVEL_WORDS,
  filling: 'beim Füllen',
  tap: 'am Hahn',
  shade: 'Schatten',
  some: 'etwas Sonne',
  full: 'volle Sonne',
  easy: 'leicht',
  moderate: 'mittelschwer',
  hard: 'schwer',
  drinking: 'Trinken',
  washing: 'Waschen',
  all: 'alle',
  stated: 'verzeichnet',
  implied: 'wahrscheinlich',
  confirmed: 'bestätigt',
  doubtful: 'zweifelhaft',
};

/** Who says what a level of water use takes. */
export const LEVEL_SOURCES: Record<UseLevel, () => Part[]> = {
  emergency: () =>
    parts`1 US-Gallone (${figure(3.8, 'l')}) je Mensch und Tag, 3/4 davon als Getränk: US FEMA, Ready.gov, Wasser`,
  basic: () =>
    parts`Grundbedarf zum Überleben, ${{ ...figure(7.5, 'l'), bare: true }} bis ${figure(15, 'l')} je Mensch und Tag: Sphere Handbook, Standard 1 der Wasserversorgung; das Abwaschen steckt im Kochen`,
  careful: () =>
    parts`${{ ...figure(10, 'l'), bare: true }} bis ${figure(15, 'l')} pro Tag für zwei Menschen ohne Dusche: übliche Praxis, keine Quelle; die Aufteilung ist unsere Annahme`,
  plenty: () =>
    parts`${figure(20, 'l')} je Mensch und Tag: WHO/WEDC technical note 9, „as soon as possible“; Aufteilung und hoher Wert sind unsere Annahme`,
};

function idlingSource(kind: FuelKind): string {
  if (kind === 'diesel') return 'mittelschwerer Diesel, US DOE Fact of the Week 861';
  if (kind === 'petrol') return 'große Benzin-Limousine, US DOE Fact of the Week 861';
  return 'Benzin aus US DOE Fact of the Week 861, nach der Energie eines Liters (unsere Annahme)';
}

/** What stands in for what a rig or a trip does not tell. */
export const DEFAULT_VALUES = {
  word: ({ word }) => parts`${Object.hasOwn(FILE_WORDS, word) ? (FILE_WORDS[word] ?? word) : word}`,
  none: () => parts`keine`,
  no: () => parts`nein`,
  number: ({ value }) => parts`${figure(value, 'count')}`,
  kilometres: ({ m }) => parts`${figure(kmOf(m), 'km')}`,
  metres: ({ m }) => parts`${figure(m, 'm')}`,
  'square-metres': ({ m2 }) => parts`${figure(m2, 'count')} m²`,
  percent: ({ percent }) => parts`${figure(percent, '%')}`,
  'percent-exactly': ({ percent }) => parts`${fixed(percent, '%', 2)}`,
  'litres-a-day': ({ litres }) => parts`${figure(litres, 'l')} pro Tag`,
  'litres-a-day-at-most': ({ litres }) => parts`höchstens ${figure(litres, 'l')} pro Tag`,
  'litres-per-100-km': ({ litres }) => parts`${figure(litres, 'l/100 km')}`,
  'litres-an-hour': ({ litres }) => parts`${fixed(litres, 'l', 2)}/h`,
  'kilometres-an-hour': ({ km }) => parts`${figure(km, 'km/h')}`,
  kilograms: ({ kg }) => parts`${fixed(kg, 'kg')}`,
  hours: ({ hours }) => parts`${figure(hours, 'count')} ${hours === 1 ? 'Stunde' : 'Stunden'}`,
  days: ({ days }) => parts`${figure(days, 'days')}`,
  'days-a-camp': ({ days }) => parts`${figure(days, 'count')} ${days === 1 ? 'Tag' : 'Tage'} je Lager`,
  'with-a-driving-day': () => parts`die Reise beginnt mit einem Fahrtag`,
  log: ({ log }) => parts`${figure(log, 'count')} log`,
  'straight-line-times': ({ factor }) => parts`${figure(factor, 'count')} × die gerade Linie`,
  'sealed-road-times': ({ factor }) => parts`${figure(factor, 'count')} × befestigte Straße`,
  'percent-for-bends': ({ surface, percent }) =>
    parts`${SURFACE_WORDS[surface]}: ${figure(percent, '%')} für Windungen`,
  'cans-none-owned': ({ litres }) => parts`${figure(litres, 'l')}, keine vorhanden`,
  'reserve-of-way': ({ m, share }) =>
    parts`${figure(kmOf(m), 'km')} und ${rounded(share * 100, '%')} des Bedarfs`,
  'kerb-includes': ({ includes }) => parts`${KERB_WORDS[includes]}`,
  'driver-of': ({ kg }) => parts`Fahrer von ${figure(kg, 'kg')}`,
  'sides-even': () => parts`${figure(0, 'm')}: Leermasse links und rechts gleich`,
  target: ({ name, logs }) => parts`${targetWords(name)} (${logsParts(logs)} log)`,
} satisfies Partial<Catalogue['phrases']>;

/** Where that comes from. */
export const DEFAULT_REASONS = {
  ours: () => parts`unsere Annahme`,
  'typical-times': ({ factor }) => parts`gewöhnlich × ${figure(factor, 'count')} (unsere Annahme)`,
  'usual-can': () => parts`gebräuchliche Größe (übliche Praxis)`,
  'gas-not-in-cans': ({ kind }) =>
    parts`${kind.toUpperCase()} gehört nur in Tanks, die am Fahrzeug befestigt sind, nie in Kanister`,
  'lpg-fill-limit': () => parts`Füllgrenze von Tanks für LPG: UNECE-Regelung 67`,
  'surface-unknown': () => parts`Untergrund unbekannt (unsere Annahme)`,
  'own-figure-wins': () =>
    parts`aus /water/litresPerDay übernommen: Ihre eigene Zahl geht der Summe der Teile vor`,
  'level-source': ({ level }) => LEVEL_SOURCES[level](),
  thirstiest: () => parts`das, was am durstigsten macht (unsere Annahme)`,
  'not-told': () => parts`nicht angegeben (unsere Annahme)`,
  'within-typical-and-high': () => parts`gilt als zwischen gewöhnlichem und hohem Verbrauch (unsere Annahme)`,
  'all-washing-carried': () => parts`alles Waschwasser wird mitgeführt: die sichere Seite (unsere Annahme)`,
  'idling-source': ({ kind }) => parts`${idlingSource(kind)}`,
  'idling-and-cooling': ({ coolingLPerHour }) =>
    parts`Leerlauf und ${figure(coolingLPerHour, 'l')}/h zum Kühlen (unsere Annahme)`,
  'load-published': () =>
    parts`veröffentlicht: 1 % je 100 lb bei einem durchschnittlichen Auto, umgerechnet auf die Masse dieses Fahrzeugs (Umrechnung unsere Annahme)`,
  'physics-only': () => parts`unsere Annahme; nur für die Schätzung aus der Physik`,
  'from-sealed-road': () =>
    parts`nicht angegeben: Untergründe werden von der befestigten Straße aus gerechnet und senken den Verbrauch nie (unsere Annahme)`,
  'heavier-reading': () => parts`die schwerere der üblichen Lesarten einer Leermasse (unsere Annahme)`,
  'type-approval': () => parts`wie in der Typgenehmigung der EU (aus dem Gedächtnis)`,
  'as-kerb-includes': () => parts`wie die Leermasse es einschließt`,
  'can-mass': () =>
    parts`schwereres Ende der Herstellerangaben für einen Kanister von ${figure(20, 'l')}, nach seiner Größe (aus dem Gedächtnis)`,
  'strictest-for-bacteria': () => parts`das strengste bei Bakterien (unsere Annahme)`,
  'tests-seldom-more': () => parts`Prüfungen zeigen selten mehr (unsere Annahme)`,
  'raw-water-worse': () => parts`Rohwasser im Tank ist der schlechtere Fall (unsere Annahme)`,
  'stated-fit-as-it-comes': () =>
    parts`als trinkbar angegebenes Wasser wird getrunken, wie es kommt (unsere Annahme)`,
  'small-osmosis': () => parts`kleine Anlagen schütten drei Viertel weg (aus dem Gedächtnis)`,
  'slow-ferry': ({ kmPerHour }) =>
    parts`mit ${rounded(kmPerHour, 'km/h')}, da die Karte nicht sagt, wie lange sie braucht (unsere Annahme)`,
} satisfies Partial<Catalogue['phrases']>;
