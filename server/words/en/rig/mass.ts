import type { Bearer, CarriedAgainst } from '../../../core/phrases/rig/mass.ts';
import type { Catalogue } from '../../parts/catalogue.ts';
import { figure, fixed, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { FUEL_SOURCES } from './fuel.ts';

/** Examples of rules on carried fuel: the rules of the place come first. */
export const FUEL_RULES = {
  'adr-own-use-tanks': () => parts`fixed tanks for the vehicle’s own use, transport for work`,
  'adr-own-use-cans': () => parts`cans for the vehicle’s own use, transport for work`,
  'adr-private-can': () => parts`one can of a private traveller`,
  'adr-private-cans': () => parts`all cans of a private traveller`,
  'adr-small-load-petrol': () => parts`petrol as a small load, transport for work`,
  'adr-small-load-diesel': () => parts`diesel as a small load, transport for work`,
  'uk-petrol-unnotified': () => parts`petrol kept without notice, United Kingdom`,
  'uk-petrol-can': () => parts`one metal petrol can, United Kingdom (of plastics ${figure(10, 'l')})`,
  'uk-petrol-notified': () => parts`petrol kept with written notice, United Kingdom`,
  'us-materials-of-trade-can': () => parts`one can as material of trade, United States`,
  'us-materials-of-trade': () => parts`all cans and their fuel as material of trade, United States`,
} satisfies Partial<Catalogue['reasons']>;

const BEARERS: Record<Bearer, { name: string; limit: string }> = {
  vehicle: { name: 'the vehicle', limit: 'what it may weigh' },
  front: { name: 'the front axle', limit: 'what it may carry' },
  rear: { name: 'the rear axle', limit: 'what it may carry' },
};

const centreOf = (heightM: number | null): Part[] =>
  heightM === null ? [] : parts` The centre of gravity is then ${fixed(heightM, 'm', 2)} up.`;

const againstRule = ({ code, carried, limit, unit, source }: CarriedAgainst): Part[] =>
  parts`${FUEL_RULES[code]()}: ${rounded(carried, unit)} against ${figure(limit, unit)} (${source})`;

/** What to mind about the vehicle's masses. */
export const MASS_CAUTIONS = {
  'mass-over-limit': ({ bearer, overKg }) =>
    parts`On this route ${BEARERS[bearer].name} is ${rounded(overKg, 'kg')} over ${BEARERS[bearer].limit}, cans not filled.`,
  'mass-over-limit-full': ({ bearer, overKg }) =>
    parts`With all tanks and cans full ${BEARERS[bearer].name} would be ${rounded(overKg, 'kg')} over ${BEARERS[bearer].limit}.`,
  'axle-lifts': ({ axle }) =>
    parts`The load lifts the ${axle} axle off the ground: check masses and positions.`,
  'mass-incomplete': ({ missing }) =>
    parts`Axle loads, sides or stability cannot be reckoned in full: the rig does not tell ${missing.join(', ')}.`,
  'mass-limit-unknown': ({ missing }) =>
    parts`Masses cannot be held against limits that the rig does not tell: ${missing.join(', ')}.`,
  'axle-lift-few': ({ steps }) =>
    parts`The height of the centre of gravity rests on ${steps} lifting ${steps === 1 ? 'step' : 'steps'}: take three or more (ISO 10392).`,
  'roof-load': ({ kg, limitKg, cgHeightM }) =>
    limitKg === null
      ? parts`${rounded(kg, 'kg')} on the roof; what the roof may carry was not told.${centreOf(cgHeightM)}`
      : parts`${rounded(kg, 'kg')} of the ${rounded(limitKg, 'kg')} that the roof may carry: ask the maker whether that holds off the road.${centreOf(cgHeightM)}`,
  'roof-over-limit': ({ kg, limitKg, cgHeightM }) =>
    parts`${rounded(kg, 'kg')} on the roof, ${rounded(kg - limitKg, 'kg')} over what it may carry.${centreOf(cgHeightM)}`,
  'rear-overhang': ({ kg, rearKg, frontKg }) =>
    parts`${rounded(kg, 'kg')} behind the rear axle, containers full, put ${rounded(rearKg, 'kg')} on it and take ${rounded(-frontKg, 'kg')} off the front.`,
  'behind-body': ({ names }, say) =>
    parts`Behind the body: ${joined(names.map(say), ', ')}. Mind the carrier's own limit, lamps and number plate.`,
  'fuel-in-cabin': ({ name }, say) =>
    parts`Fuel in the cabin: ${say(name)}. Its vapour can burn and poison: carry fuel outside, ventilated.`,
  'carried-fuel': ({ over }) =>
    parts`More fuel than some countries let a vehicle carry. Examples, the rules of the place come first: ${joined(over.map(againstRule), '; ')}.`,
} satisfies Partial<Catalogue['cautions']>;

/** Labels of masses, and what a litre is taken to weigh. */
export const MASS_PHRASES = {
  'own-name': ({ name }) => parts`${name}`,
  'owned-cans': ({ commodity, owned, litres }) =>
    parts`${owned} ${commodity} ${owned === 1 ? 'can' : 'cans'} of ${figure(litres, 'l')}`,
  'kerb-mass': () => parts`kerb mass`,
  'kerb-driver': () => parts`driver that the kerb mass includes`,
  'kerb-filling': ({ of }, say) => parts`filling of ${say(of)} in the kerb mass`,
  'empty-container': ({ of }, say) => parts`${say(of)}, empty`,
  filling: ({ litres, of }, say) => parts`${rounded(litres, 'l')} in ${say(of)}`,
  rider: ({ kind }) => parts`${kind}`,
  water: () => parts`water`,
  'fuel-density-source': ({ kind }) => parts`upper bound; ${FUEL_SOURCES[kind]}`,
  'water-density-source': () =>
    parts`within 0.8 % up to ${figure(40, '°C')} (Tanaka et al., Metrologia 38, 2001)`,
} satisfies Partial<Catalogue['phrases']>;
