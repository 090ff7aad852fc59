import type { Bearer, CarriedAgainst } from '../../../core/phrases/rig/mass.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { counted } from '../shared/numbers.ts';
import { cansText } from '../shared/words.ts';
import { FUEL_SOURCES } from './fuel.ts';

/** Examples of rules on carried fuel: the rules of the place come first. */
export const FUEL_RULES = {
  'adr-own-use-tanks': () =>
    parts`fest eingebaute Tanks für den Eigenbedarf des Fahrzeugs, gewerbliche Beförderung`,
  'adr-own-use-cans': () => parts`Kanister für den Eigenbedarf des Fahrzeugs, gewerbliche Beförderung`,
  'adr-private-can': () => parts`ein Kanister von Privatreisenden`,
  'adr-private-cans': () => parts`alle Kanister von Privatreisenden`,
  'adr-small-load-petrol': () => parts`Benzin als Kleinmenge, gewerbliche Beförderung`,
  'adr-small-load-diesel': () => parts`Diesel als Kleinmenge, gewerbliche Beförderung`,
  'uk-petrol-unnotified': () => parts`Benzin, ohne Anzeige gelagert, Vereinigtes Königreich`,
  'uk-petrol-can': () =>
    parts`ein Benzinkanister aus Metall, Vereinigtes Königreich (aus Kunststoff ${figure(10, 'l')})`,
  'uk-petrol-notified': () => parts`Benzin, mit schriftlicher Anzeige gelagert, Vereinigtes Königreich`,
  'us-materials-of-trade-can': () => parts`ein Kanister als „material of trade“, Vereinigte Staaten`,
  'us-materials-of-trade': () =>
    parts`alle Kanister mit ihrem Kraftstoff als „materials of trade“, Vereinigte Staaten`,
} satisfies Partial<Catalogue['reasons']>;

const BEARERS: Record<Bearer, { name: string; limit: string }> = {
  vehicle: { name: 'das Fahrzeug', limit: 'dem, was es wiegen darf' },
  front: { name: 'die Vorderachse', limit: 'dem, was sie tragen darf' },
  rear: { name: 'die Hinterachse', limit: 'dem, was sie tragen darf' },
};

const AXLES = { front: 'Vorderachse', rear: 'Hinterachse' } as const;

const centreOf = (heightM: number | null): Part[] =>
  heightM === null ? [] : parts` Der Schwerpunkt liegt dann in ${fixed(heightM, 'm', 2)} Höhe.`;

const againstRule = ({ code, carried, limit, unit, source }: CarriedAgainst): Part[] =>
  parts`${FUEL_RULES[code]()}: ${rounded(carried, unit)} gegenüber ${figure(limit, unit)} (${source})`;

/** What to mind about the vehicle's masses. */
export const MASS_CAUTIONS = {
  'mass-over-limit': ({ bearer, overKg }) =>
    parts`Auf dieser Route liegt ${BEARERS[bearer].name} ${rounded(overKg, 'kg')} über ${BEARERS[bearer].limit}, ohne gefüllte Kanister.`,
  'mass-over-limit-full': ({ bearer, overKg }) =>
    parts`Mit allen Tanks und Kanistern voll läge ${BEARERS[bearer].name} ${rounded(overKg, 'kg')} über ${BEARERS[bearer].limit}.`,
  'axle-lifts': ({ axle }) => parts`Die Ladung hebt die ${AXLES[axle]} vom Boden: Massen und Lagen prüfen.`,
  'mass-incomplete': ({ missing }) =>
    parts`Achslasten, Seiten oder Standsicherheit lassen sich nicht vollständig rechnen: in der Ausrüstung fehlt ${missing.join(', ')}.`,
  'mass-limit-unknown': ({ missing }) =>
    parts`Massen lassen sich nicht mit Grenzen vergleichen, die in der Ausrüstung fehlen: ${missing.join(', ')}.`,
  'axle-lift-few': ({ steps }) =>
    parts`Die Höhe des Schwerpunkts beruht auf ${counted(steps, 'Hubschritt', 'Hubschritten')}: drei oder mehr nehmen (ISO 10392).`,
  'roof-load': ({ kg, limitKg, cgHeightM }) =>
    limitKg === null
      ? parts`${rounded(kg, 'kg')} auf dem Dach; was das Dach tragen darf, wurde nicht angegeben.${centreOf(cgHeightM)}`
      : parts`${rounded(kg, 'kg')} von den ${rounded(limitKg, 'kg')}, die das Dach tragen darf: den Hersteller fragen, ob das abseits der Straße gilt.${centreOf(cgHeightM)}`,
  'roof-over-limit': ({ kg, limitKg, cgHeightM }) =>
    parts`${rounded(kg, 'kg')} auf dem Dach, ${rounded(kg - limitKg, 'kg')} über dem, was es tragen darf.${centreOf(cgHeightM)}`,
  'rear-overhang': ({ kg, rearKg, frontKg }) =>
    parts`${rounded(kg, 'kg')} hinter der Hinterachse, Behälter voll, belasten sie mit ${rounded(rearKg, 'kg')} und entlasten die Vorderachse um ${rounded(-frontKg, 'kg')}.`,
  'behind-body': ({ names }, say) =>
    parts`Hinter dem Aufbau: ${joined(names.map(say), ', ')}. Auf die Grenze des Trägers selbst, auf Leuchten und Kennzeichen achten.`,
  'fuel-in-cabin': ({ name }, say) =>
    parts`Kraftstoff in der Kabine: ${say(name)}. Sein Dampf kann brennen und vergiften: Kraftstoff draußen und belüftet mitführen.`,
  'carried-fuel': ({ over }) =>
    parts`Mehr Kraftstoff, als manche Länder ein Fahrzeug mitführen lassen. Beispiele, die Vorschriften am Ort gehen vor: ${joined(over.map(againstRule), '; ')}.`,
} satisfies Partial<Catalogue['cautions']>;

const RIDERS = { person: 'Mensch', pet: 'Tier', gear: 'Gepäck' } as const;

/** Labels of masses, and what a litre is taken to weigh. */
export const MASS_PHRASES = {
  'own-name': ({ name }) => parts`${name}`,
  'owned-cans': ({ commodity, owned, litres }) =>
    parts`${cansText(owned, commodity)} zu ${figure(litres, 'l')}`,
  'kerb-mass': () => parts`Leermasse`,
  'kerb-driver': () => parts`Fahrer, den die Leermasse einschließt`,
  'kerb-filling': ({ of }, say) => parts`Füllung in der Leermasse: ${say(of)}`,
  'empty-container': ({ of }, say) => parts`${say(of)}, leer`,
  filling: ({ litres, of }, say) => parts`${rounded(litres, 'l')} in: ${say(of)}`,
  rider: ({ kind }) => parts`${RIDERS[kind]}`,
  water: () => parts`Wasser`,
  'fuel-density-source': ({ kind }) => parts`obere Grenze; ${FUEL_SOURCES[kind]}`,
  'water-density-source': () =>
    parts`auf 0,8 % genau bis ${figure(40, '°C')} (Tanaka et al., Metrologia 38, 2001)`,
} satisfies Partial<Catalogue['phrases']>;
