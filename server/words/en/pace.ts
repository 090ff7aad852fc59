import type { Catalogue } from '../parts/catalogue.ts';
import { figure, halfUp, placeAt, rounded } from '../parts/figures.ts';
import { type Part, parts } from '../parts/part.ts';
import { called } from './places/called.ts';

/** "2027-05-03T14:05" as a person writes it. */
const clock = (local: string): string => local.replace('T', ' ');

const arrival = (earliest: string, latest: string): Part[] =>
  earliest === latest ? parts`${clock(earliest)}` : parts`from ${clock(earliest)} to ${clock(latest)}`;

/** Defaults of the pace. */
export const PACE_PHRASES = {
  'slow-pace': ({ kmPerHour }) => parts`${rounded(kmPerHour, 'km/h')} slow`,
  'share-of-rig-pace': ({ share }) => parts`the rig's pace × ${share} (ours)`,
} satisfies Partial<Catalogue['phrases']>;

/** Cautions on days, nights and hours. */
export const PACE_CAUTIONS = {
  'camp-twice': ({ atM, withinM }) =>
    parts`The camp at ${placeAt(atM)} is within ${figure(withinM, 'm')} of another and is taken as the same.`,
  'camp-after-hours-late': ({ askedHours, rigHours }) =>
    parts`A camp after ${figure(askedHours, 'h')} of driving was asked for, but the rig drives ${figure(rigHours, 'h')} a day: reckoned with ${figure(rigHours, 'h')}. Raise the rig's hours per day to drive longer.`,
  'opening-hours-unread': ({ name, hours }, say) =>
    parts`The opening hours of ${called(name, say)} cannot be read ("${hours}"): taken as unknown. Ask before you plan on it.`,
  'opening-hours-unknown': ({ name, earliest, latest, why }, say) =>
    parts`Whether ${called(name, say)} is open when you arrive, ${arrival(earliest, latest)}, its mapped hours do not tell${why === null ? '' : ` (${why})`}. Ask first.`,
  'shut-on-arrival': ({ name, earliest, latest, wait }, say) => {
    const meanwhile =
      wait === null
        ? parts`no opening is found in the days after`
        : parts`waiting takes up to ${halfUp(wait.hours, 'h')} and ${halfUp(wait.waterL, 'l')} of water`;
    return parts`${called(name, say)} is mapped as shut at some of the time in which you may arrive, ${arrival(earliest, latest)}: ${meanwhile}, or come earlier.`;
  },
  'night-may-fall-inside': ({ moreL, emptied }) =>
    parts`A crew that goes faster spends a night more on this stretch, ${halfUp(moreL, 'l')} of water more: then ${emptied ? 'the water does not last' : 'it goes into the reserve'}.`,
} satisfies Partial<Catalogue['cautions']>;
