import type { FuelKind } from '../../../contract/rig.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, kmOf, placeAt, rounded } from '../../parts/figures.ts';
import { parts } from '../../parts/part.ts';

/** What to know of the fuel of a trip. */
export const FUEL_CAUTIONS = {
  'surface-off-route': ({ fromM }) =>
    parts`The surface told from ${placeAt(fromM)} on lies past the end of the route and is left out.`,
  'elevation-absurd': ({ count }) =>
    parts`${count} elevations of the route are none that a road has and are left out.`,
  'climb-unknown': ({ m }) =>
    m === null
      ? parts`The route has no elevations: fuel for climbs is not reckoned.`
      : parts`The route has no elevations for ${fixed(kmOf(m), 'km')}: climbs there are not reckoned.`,
  'climb-not-reckoned': ({ upM }) =>
    parts`The route climbs ${rounded(upM, 'm', 0)} in all; fuel for that is reckoned only when the mass at which the rate was observed is told.`,
  'load-not-reckoned': () =>
    parts`The mass at which the fuel rate was observed is not told: the load adds nothing to the rate, and descents spare nothing. Tell it.`,
  'cold-diesel': ({ nightC, arctic }) => {
    const standard =
      arctic === null
        ? 'No class of EN 590 is made for that'
        : parts`Arctic class ${arctic.name} of EN 590 stays fluid to ${figure(arctic.pluggingC, '°C')} (from memory)`;
    return parts`Diesel bought where it is warm may clog the filter at ${figure(nightC, '°C')}. ${standard}: ask for winter diesel, and fill it before the cold.`;
  },
  'cng-kilograms': ({ tanksKg, kgPer100Km, kgPerLitre }) =>
    parts`CNG is reckoned in litres of tank at 200 bar, ${fixed(kgPerLitre, 'kg', 2)} each: the tanks give ${fixed(tanksKg, 'kg')}, the rate is ${fixed(kgPer100Km, 'kg')} in ${figure(100, 'km')}. A rig file may tell \`kg\` of a tank and \`kgPer100Km\` instead.`,
  'urea-short': ({ longestM, rangeM, shortL }) =>
    parts`Urea solution: the longest way without a place that lists it is ${fixed(kmOf(longestM), 'km', 0)}, a tank goes ${fixed(kmOf(rangeM), 'km', 0)}. Carry ${fixed(shortL, 'l')} more: many engines do not start without it.`,
} satisfies Partial<Catalogue['cautions']>;

const KINDS: Record<FuelKind, string> = {
  diesel: 'diesel',
  petrol: 'petrol',
  lpg: 'LPG',
  cng: 'CNG (litres of tank at 200 bar)',
  lng: 'LNG',
  kerosene: 'kerosene',
  e85: 'E85',
};

/** Where density and energy of a fuel come from. */
export const FUEL_SOURCES: Record<FuelKind, string> = {
  diesel: 'density EN 590, Table 1 (typical from memory); energy ADR 1.1.3.2, lower bound US DOE AFDC',
  petrol: 'density EN 228 (typical from memory); energy ADR 1.1.3.2, bounds US DOE AFDC for E10',
  lpg: 'energy ADR 1.1.3.2; density and bounds from memory',
  cng: 'from memory: 35 MJ a standard cubic metre (ADR 1.1.3.2), some 240 of them in a cubic metre at 200 bar',
  lng: 'from memory',
  kerosene: 'from memory',
  e85: 'energy 85 % ethanol and 15 % petrol of ADR 1.1.3.2; density and bounds from memory',
};

/** How far the estimate from physics can be trusted on a surface, and where its resistance comes from. */
const TRUST: Record<Surface, string> = {
  sealed:
    'Fair at steady speed; tyre pressure and tread shift it. engineering table: concrete and new asphalt 0.010 to 0.015, asphalt 0.02',
  gravel:
    'A hint: packed and loose gravel differ threefold, and corrugations are not in it. well-packed gravel 0.012 (Marks), rolled new gravel 0.02, loose worn gravel 0.04',
  track:
    'A hint: ruts, low gears and stopping are not in it. between rolled gravel 0.02 and medium hard soil 0.04 to 0.08 (engineering table)',
  sand: 'Not to be trusted in soft sand: it hangs on tyre pressure, moisture and momentum more than on the table. solid sand 0.04 to 0.08, loose sand 0.2 to 0.4 (engineering table), sand 0.1 to 0.2 (Carvill)',
  rock: 'Not to be trusted at walking pace in low gear: count litres per hour there. engineering table: large worn cobbles 0.03; bounds ours',
  mud: 'Not to be trusted: wheelspin and sinking in are not in it. medium hard soil 0.04 to 0.08 (engineering table, Carvill), wet loose gravel 0.06 (Marks); upper bound ours',
  salt: 'Not to be trusted: a hard crust rolls like a road, a broken one like mud. ours',
  unknown: 'No estimate for what is not known',
};

/** Labels of litres, names of fuels, and how far estimates can be trusted. */
export const FUEL_PHRASES = {
  'rate-by-hour': ({ litresPerHour, kmPerHour }) =>
    parts`at ${figure(litresPerHour, 'l')} an hour and ${rounded(kmPerHour, 'km/h', 2)}`,
  'rate-by-distance': ({ litresPer100Km, surfaceFactor, loadFactor }) => {
    const times = (factor: number, what: string) =>
      factor === 1 ? '' : parts` × ${rounded(factor, 'count', 2)} for ${what}`;
    return parts`at ${figure(litresPer100Km, 'l/100 km')}${times(surfaceFactor, 'the surface')}${times(loadFactor, 'load')}`;
  },
  'way-at-rate': ({ wayM, surface, rate }, say) =>
    parts`${rounded(kmOf(wayM), 'km')} ${surface === 'unknown' ? 'along the route' : `of ${surface}`} ${say(rate)}`,
  climbs: ({ kg }) => parts`climbs less what descents spare, ${rounded(kg, 'kg', 0)}`,
  'by-the-hour': () => parts`by the hour: idling, cooling, heating`,
  'less-where-lighter': () => parts`less where less is aboard`,
  'fuel-kind': ({ kind }) => parts`${KINDS[kind]}`,
  'fuel-kind-source': ({ kind }) => parts`${FUEL_SOURCES[kind]}`,
  'rolling-trust': ({ surface }) => parts`${TRUST[surface]}`,
  can: () => parts`can`,
} satisfies Partial<Catalogue['phrases']>;
