import type { UseLevel } from '../../../contract/crew.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, kmOf, rounded } from '../../parts/figures.ts';
import { type Part, parts } from '../../parts/part.ts';
import { logsParts } from './treatment-waters.ts';

const KERB_WORDS = { 'full-fuel-no-driver': 'full tanks, no driver', 'running-order': 'running order' };

/** Who says what a level of water use takes. */
export const LEVEL_SOURCES: Record<UseLevel, () => Part[]> = {
  emergency: () =>
    parts`1 US gallon (${figure(3.8, 'l')}) a person and day, 3/4 of it as fluid: US FEMA, Ready.gov, water`,
  basic: () =>
    parts`basic survival needs ${{ ...figure(7.5, 'l'), bare: true }} to ${figure(15, 'l')} a person and day: Sphere Handbook, water supply standard 1; washing up is in cooking`,
  careful: () =>
    parts`${{ ...figure(10, 'l'), bare: true }} to ${figure(15, 'l')} a day for two people without shower: common practice, no source; the split is ours`,
  plenty: () =>
    parts`${figure(20, 'l')} a person and day: WHO/WEDC technical note 9, "as soon as possible"; the split and the high end are ours`,
};

function idlingSource(kind: FuelKind): string {
  if (kind === 'diesel') return 'medium heavy diesel, US DOE Fact of the Week 861';
  if (kind === 'petrol') return 'large petrol sedan, US DOE Fact of the Week 861';
  return 'petrol of US DOE Fact of the Week 861, by energy of a litre (ours)';
}

/** What stands in for what a rig or a trip does not tell. */
export const DEFAULT_VALUES = {
  word: ({ word }) => parts`${word}`,
  none: () => parts`none`,
  no: () => parts`no`,
  number: ({ value }) => parts`${value}`,
  kilometres: ({ m }) => parts`${figure(kmOf(m), 'km')}`,
  metres: ({ m }) => parts`${figure(m, 'm')}`,
  'square-metres': ({ m2 }) => parts`${m2} m²`,
  percent: ({ percent }) => parts`${figure(percent, '%')}`,
  'percent-exactly': ({ percent }) => parts`${fixed(percent, '%', 2)}`,
  'litres-a-day': ({ litres }) => parts`${figure(litres, 'l')} a day`,
  'litres-a-day-at-most': ({ litres }) => parts`${figure(litres, 'l')} a day at most`,
  'litres-per-100-km': ({ litres }) => parts`${figure(litres, 'l/100 km')}`,
  'litres-an-hour': ({ litres }) => parts`${fixed(litres, 'l', 2)}/h`,
  'kilometres-an-hour': ({ km }) => parts`${figure(km, 'km/h')}`,
  kilograms: ({ kg }) => parts`${fixed(kg, 'kg')}`,
  hours: ({ hours }) => parts`${hours} hours`,
  days: ({ days }) => parts`${figure(days, 'days')}`,
  'days-a-camp': ({ days }) => parts`${days} day a camp`,
  'with-a-driving-day': () => parts`the trip starts with a driving day`,
  log: ({ log }) => parts`${log} log`,
  'straight-line-times': ({ factor }) => parts`${factor} × the straight line`,
  'sealed-road-times': ({ factor }) => parts`${factor} × sealed road`,
  'percent-for-bends': ({ surface, percent }) => parts`${surface}: ${figure(percent, '%')} for bends`,
  'cans-none-owned': ({ litres }) => parts`${figure(litres, 'l')}, none owned`,
  'reserve-of-way': ({ m, share }) =>
    parts`${figure(kmOf(m), 'km')} and ${rounded(share * 100, '%')} of the need`,
  'kerb-includes': ({ includes }) => parts`${KERB_WORDS[includes]}`,
  'driver-of': ({ kg }) => parts`a driver of ${figure(kg, 'kg')}`,
  'sides-even': () => parts`${figure(0, 'm')}: kerb mass even on left and right`,
  target: ({ name, logs }) => parts`${name} (${logsParts(logs)} log)`,
} satisfies Partial<Catalogue['phrases']>;

/** Where that comes from. */
export const DEFAULT_REASONS = {
  ours: () => parts`ours`,
  'typical-times': ({ factor }) => parts`typical × ${factor} (ours)`,
  'usual-can': () => parts`usual size (common practice)`,
  'gas-not-in-cans': ({ kind }) =>
    parts`${kind.toUpperCase()} goes in tanks fixed to the vehicle only, never in cans`,
  'lpg-fill-limit': () => parts`filling limit of tanks for LPG: UNECE Regulation 67`,
  'surface-unknown': () => parts`surface unknown (ours)`,
  'own-figure-wins': () =>
    parts`taken from /water/litresPerDay: your own figure wins over the sum of the parts`,
  'level-source': ({ level }) => LEVEL_SOURCES[level](),
  thirstiest: () => parts`the thirstiest (ours)`,
  'not-told': () => parts`not told (ours)`,
  'within-typical-and-high': () => parts`taken to lie between typical and high use (ours)`,
  'all-washing-carried': () => parts`all washing water is carried: the safe side (ours)`,
  'idling-source': ({ kind }) => parts`${idlingSource(kind)}`,
  'idling-and-cooling': ({ coolingLPerHour }) =>
    parts`idling and ${figure(coolingLPerHour, 'l')}/h for cooling (ours)`,
  'load-published': () =>
    parts`published 1 % for 100 lb of an average car, by the mass of this vehicle (scaling ours)`,
  'physics-only': () => parts`ours; for the estimate from physics only`,
  'from-sealed-road': () =>
    parts`not told: surfaces are reckoned from sealed road and never lower the rate (ours)`,
  'heavier-reading': () => parts`the heavier of the usual readings of a kerb mass (ours)`,
  'type-approval': () => parts`as in EU type approval (from memory)`,
  'as-kerb-includes': () => parts`as the kerb mass includes`,
  'can-mass': () =>
    parts`heavier end of makers’ sheets for a can of ${figure(20, 'l')}, by its size (from memory)`,
  'strictest-for-bacteria': () => parts`the strictest for bacteria (ours)`,
  'tests-seldom-more': () => parts`tests seldom show more (ours)`,
  'raw-water-worse': () => parts`raw water in the tank is the worse case (ours)`,
  'stated-fit-as-it-comes': () => parts`water stated fit to drink is drunk as it comes (ours)`,
  'small-osmosis': () => parts`small units throw three quarters away (from memory)`,
  'slow-ferry': ({ kmPerHour }) =>
    parts`at ${rounded(kmPerHour, 'km/h')}, as the map does not say how long it takes (ours)`,
} satisfies Partial<Catalogue['phrases']>;
