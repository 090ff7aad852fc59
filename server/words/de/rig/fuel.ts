import type { FuelKind } from '../../../contract/rig.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, kmOf, placeAt, rounded } from '../../parts/figures.ts';
import { parts } from '../../parts/part.ts';
import { counted } from '../shared/numbers.ts';
import { FUEL_WORDS, SURFACE_WORDS } from '../shared/words.ts';

/** What to know of the fuel of a trip. */
export const FUEL_CAUTIONS = {
  'surface-off-route': ({ fromM }) =>
    parts`Der ab ${placeAt(fromM)} angegebene Untergrund liegt nach dem Ende der Route und wird weggelassen.`,
  'elevation-absurd': ({ count }) =>
    parts`${counted(count, 'Höhe der Route ist keine, die eine Straße hat, und wird', 'Höhen der Route sind keine, die eine Straße hat, und werden')} weggelassen.`,
  'climb-unknown': ({ m }) =>
    m === null
      ? parts`Die Route hat keine Höhen: Kraftstoff für Steigungen ist nicht gerechnet.`
      : parts`Die Route hat auf ${fixed(kmOf(m), 'km')} keine Höhen: Steigungen dort sind nicht gerechnet.`,
  'climb-not-reckoned': ({ upM }) =>
    parts`Die Route steigt insgesamt ${rounded(upM, 'm', 0)}; Kraftstoff dafür wird nur gerechnet, wenn die Masse angegeben ist, bei der der Verbrauch beobachtet wurde.`,
  'load-not-reckoned': () =>
    parts`Bei welcher Masse der Verbrauch beobachtet wurde, ist nicht angegeben: die Ladung erhöht ihn nicht, und Gefälle sparen nichts. Angeben.`,
  'cold-diesel': ({ nightC, arctic }) => {
    const standard =
      arctic === null
        ? 'Keine Klasse von EN 590 ist dafür gemacht'
        : parts`Die arktische Klasse ${arctic.name} von EN 590 bleibt bis ${figure(arctic.pluggingC, '°C')} flüssig (aus dem Gedächtnis)`;
    return parts`Diesel, der in der Wärme gekauft wurde, kann bei ${figure(nightC, '°C')} den Filter verstopfen. ${standard}: nach Winterdiesel fragen und ihn vor der Kälte tanken.`;
  },
  'cng-kilograms': ({ tanksKg, kgPer100Km, kgPerLitre }) =>
    parts`CNG wird in Litern Tankinhalt bei 200 bar gerechnet, zu je ${fixed(kgPerLitre, 'kg', 2)}: die Tanks geben ${fixed(tanksKg, 'kg')}, der Verbrauch ist ${fixed(kgPer100Km, 'kg')} auf ${figure(100, 'km')}. Eine Ausrüstungsdatei kann stattdessen \`kg\` eines Tanks und \`kgPer100Km\` angeben.`,
  'urea-short': ({ longestM, rangeM, shortL }) =>
    parts`Harnstofflösung: der längste Weg ohne eine Stelle, die sie führt, ist ${fixed(kmOf(longestM), 'km', 0)}, ein Tank reicht ${fixed(kmOf(rangeM), 'km', 0)}. ${fixed(shortL, 'l')} mehr mitführen: viele Motoren springen ohne sie nicht an.`,
} satisfies Partial<Catalogue['cautions']>;

const KINDS: Record<FuelKind, string> = { ...FUEL_WORDS, cng: 'CNG (Liter Tankinhalt bei 200 bar)' };

/** Where density and energy of a fuel come from. */
export const FUEL_SOURCES: Record<FuelKind, string> = {
  diesel:
    'Dichte EN 590, Tabelle 1 (gewöhnlicher Wert aus dem Gedächtnis); Energie ADR 1.1.3.2, untere Grenze US DOE AFDC',
  petrol:
    'Dichte EN 228 (gewöhnlicher Wert aus dem Gedächtnis); Energie ADR 1.1.3.2, Grenzen US DOE AFDC für E10',
  lpg: 'Energie ADR 1.1.3.2; Dichte und Grenzen aus dem Gedächtnis',
  cng: 'aus dem Gedächtnis: 35 MJ je Normkubikmeter (ADR 1.1.3.2), etwa 240 davon in einem Kubikmeter bei 200 bar',
  lng: 'aus dem Gedächtnis',
  kerosene: 'aus dem Gedächtnis',
  e85: 'Energie aus 85 % Ethanol und 15 % Benzin nach ADR 1.1.3.2; Dichte und Grenzen aus dem Gedächtnis',
};

/** How far the estimate from physics can be trusted on a surface, and where its resistance comes from. */
const TRUST: Record<Surface, string> = {
  sealed:
    'Brauchbar bei gleichmäßiger Fahrt; Reifendruck und Profil verschieben es. Ingenieurtabelle: Beton und neuer Asphalt 0,010 bis 0,015, Asphalt 0,02',
  gravel:
    'Ein Anhalt: fester und loser Schotter unterscheiden sich um das Dreifache, und Wellblech ist nicht darin. gut verdichteter Schotter 0,012 (Marks), frisch gewalzter Schotter 0,02, loser ausgefahrener Schotter 0,04',
  track:
    'Ein Anhalt: Spurrillen, kleine Gänge und Anhalten sind nicht darin. zwischen gewalztem Schotter 0,02 und mittelhartem Boden 0,04 bis 0,08 (Ingenieurtabelle)',
  sand: 'In weichem Sand nicht verlässlich: es hängt mehr an Reifendruck, Feuchte und Schwung als an der Tabelle. fester Sand 0,04 bis 0,08, loser Sand 0,2 bis 0,4 (Ingenieurtabelle), Sand 0,1 bis 0,2 (Carvill)',
  rock: 'Im Schritttempo in kleinen Gängen nicht verlässlich: dort Liter je Stunde zählen. Ingenieurtabelle: großes ausgefahrenes Kopfsteinpflaster 0,03; Grenzen unsere Annahme',
  mud: 'Nicht verlässlich: durchdrehende Räder und Einsinken sind nicht darin. mittelharter Boden 0,04 bis 0,08 (Ingenieurtabelle, Carvill), nasser loser Schotter 0,06 (Marks); obere Grenze unsere Annahme',
  salt: 'Nicht verlässlich: eine harte Kruste rollt wie eine Straße, eine gebrochene wie Schlamm. unsere Annahme',
  unknown: 'Keine Schätzung für das, was nicht bekannt ist',
};

/** "Schotter", and what is no noun as one: "befestigte Straße". */
const onSurface = (surface: Surface): string => {
  if (surface === 'unknown') return 'auf der Route';
  return surface === 'sealed' ? 'befestigte Straße' : SURFACE_WORDS[surface];
};

/** Labels of litres, names of fuels, and how far estimates can be trusted. */
export const FUEL_PHRASES = {
  'rate-by-hour': ({ litresPerHour, kmPerHour }) =>
    parts`zu ${figure(litresPerHour, 'l')} je Stunde und ${rounded(kmPerHour, 'km/h', 2)}`,
  'rate-by-distance': ({ litresPer100Km, surfaceFactor, loadFactor }) => {
    const times = (factor: number, what: string) =>
      factor === 1 ? '' : parts` × ${rounded(factor, 'count', 2)} für ${what}`;
    return parts`zu ${figure(litresPer100Km, 'l/100 km')}${times(surfaceFactor, 'den Untergrund')}${times(loadFactor, 'die Ladung')}`;
  },
  'way-at-rate': ({ wayM, surface, rate }, say) =>
    parts`${rounded(kmOf(wayM), 'km')} ${onSurface(surface)} ${say(rate)}`,
  climbs: ({ kg }) => parts`Steigungen abzüglich dessen, was Gefälle sparen, ${rounded(kg, 'kg', 0)}`,
  'by-the-hour': () => parts`nach Stunden: Leerlauf, Kühlen, Heizen`,
  'less-where-lighter': () => parts`weniger, wo weniger an Bord ist`,
  'fuel-kind': ({ kind }) => parts`${KINDS[kind]}`,
  'fuel-kind-source': ({ kind }) => parts`${FUEL_SOURCES[kind]}`,
  'rolling-trust': ({ surface }) => parts`${TRUST[surface]}`,
  can: () => parts`Kanister`,
} satisfies Partial<Catalogue['phrases']>;
