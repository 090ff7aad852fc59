import type { Catalogue } from '../parts/catalogue.ts';
import { figure, kmOf, rounded } from '../parts/figures.ts';
import { parts } from '../parts/part.ts';
import { SURFACE_WORDS } from './shared/words.ts';

/** Labels of the terms of a gap. */
export const GAP_TERMS = {
  'along-the-route': () => parts`auf der Route`,
  'back-to-the-route': () => parts`von der Versorgung zurück zur Route`,
  'failing-supply-and-back': () => parts`zu einer Versorgung, die ausfällt, und zurück`,
  'to-the-supply': () => parts`von der Route zur Versorgung`,
  'past-the-end': () => parts`nach dem Ende der Route`,
  'allowance-for-bends': ({ straightLines }) =>
    parts`Zuschlag für Windungen${straightLines ? ' und gerade Linien' : ''}`,
  'off-the-route': ({ wayM }) => parts`${rounded(kmOf(wayM), 'km')} abseits der Route`,
  'along-the-route-at': ({ wayM, litresPer100Km }) =>
    parts`${rounded(kmOf(wayM), 'km')} auf der Route zu ${figure(litresPer100Km, 'l/100 km')}`,
  'filling-and-waiting': () => parts`Füllen und Warten`,
  'days-elapsed': ({ days, litresPerDay }) =>
    parts`${rounded(days, 'days')} zu ${figure(litresPerDay, 'l')} pro Tag`,
  'hotter-stretches': () => parts`mehr auf heißeren Stücken`,
  'share-of-need': ({ share }) => parts`${rounded(share * 100, '%')} des Bedarfs`,
  'reserve-km': ({ km, litresPer100Km, surface }) =>
    surface === null
      ? parts`${figure(km, 'km')} zu ${figure(litresPer100Km, 'l/100 km')}`
      : parts`${figure(km, 'km')} zu ${rounded(litresPer100Km, 'l/100 km')} (${surface === 'unknown' ? 'wie beladen' : `${SURFACE_WORDS[surface]}, das Schwerste am Ende des Abschnitts oder danach`})`,
  'reserve-days': ({ days, litresPerDay, graded, why }, say) => {
    const time = graded || why !== null ? rounded(days, 'days') : figure(days, 'days');
    const rate = graded ? rounded(litresPerDay, 'l') : figure(litresPerDay, 'l');
    return parts`${time} zu ${rate} pro Tag${graded ? ' Trinkqualität' : ''}${why === null ? '' : parts` (${say(why)})`}`;
  },
  'reserve-fraction': ({ share }) => parts`${rounded(share * 100, '%')} dessen, was die Tanks geben`,
  'reserve-litres': ({ litres }) => parts`${figure(litres, 'l')}`,
} satisfies Partial<Catalogue['phrases']>;
