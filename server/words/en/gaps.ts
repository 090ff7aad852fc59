import type { Catalogue } from '../parts/catalogue.ts';
import { figure, kmOf, rounded } from '../parts/figures.ts';
import { parts } from '../parts/part.ts';

/** Labels of the terms of a gap. */
export const GAP_TERMS = {
  'along-the-route': () => parts`along the route`,
  'back-to-the-route': () => parts`from the supply back to the route`,
  'failing-supply-and-back': () => parts`to a supply that fails, and back`,
  'to-the-supply': () => parts`from the route to the supply`,
  'past-the-end': () => parts`past the end of the route`,
  'allowance-for-bends': ({ straightLines }) =>
    parts`allowance for bends${straightLines ? ' and straight lines' : ''}`,
  'off-the-route': ({ wayM }) => parts`${rounded(kmOf(wayM), 'km')} off the route`,
  'along-the-route-at': ({ wayM, litresPer100Km }) =>
    parts`${rounded(kmOf(wayM), 'km')} along the route at ${figure(litresPer100Km, 'l/100 km')}`,
  'filling-and-waiting': () => parts`filling and waiting`,
  'days-elapsed': ({ days, litresPerDay }) =>
    parts`${rounded(days, 'days')} at ${figure(litresPerDay, 'l')} a day`,
  'hotter-stretches': () => parts`more on hotter stretches`,
  'share-of-need': ({ share }) => parts`${rounded(share * 100, '%')} of the need`,
  'reserve-km': ({ km, litresPer100Km, surface }) =>
    surface === null
      ? parts`${figure(km, 'km')} at ${figure(litresPer100Km, 'l/100 km')}`
      : parts`${figure(km, 'km')} at ${rounded(litresPer100Km, 'l/100 km')} (${surface === 'unknown' ? 'as loaded' : `${surface}, the hardest at the end of the stretch or behind it`})`,
  'reserve-days': ({ days, litresPerDay, graded, why }, say) => {
    const time = graded || why !== null ? rounded(days, 'days') : figure(days, 'days');
    const rate = graded ? rounded(litresPerDay, 'l') : figure(litresPerDay, 'l');
    return parts`${time} at ${rate} a day${graded ? ' of drinking grade' : ''}${why === null ? '' : parts` (${say(why)})`}`;
  },
  'reserve-fraction': ({ share }) => parts`${rounded(share * 100, '%')} of what the tanks give`,
  'reserve-litres': ({ litres }) => parts`${litres} litres`,
} satisfies Partial<Catalogue['phrases']>;
