import type { WaterClass } from '../../../contract/common.ts';
import type { PetSource } from '../../../core/phrases/rig/crew.ts';
import type { PlaceName } from '../../../core/phrases/said/supply-kinds.ts';
import type { Catalogue, Say } from '../../parts/catalogue.ts';
import { bare, figure, fixed, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { called } from '../places/called.ts';
import { LEVEL_SOURCES } from './defaults.ts';

/** What a water of a class is fit for. */
const FIT: Record<WaterClass, string> = {
  drinking: 'fit to drink',
  treatable: 'fit to drink only after the treatment line',
  washing: 'fit for washing only',
  none: 'fit for nothing',
};

const OWN = 'your own figure';
const DOGS =
  '44 to 66 ml a kg and day (Merck Veterinary Manual) and 112 ml × kg^0.75 (NRC 2006), the wider of both';
const PETS: Record<PetSource, string> = { dog: DOGS, 'as-dog': `as a dog (ours): ${DOGS}`, own: OWN };

const lowered = ({ name, container }: { name: PlaceName; container: WaterClass }, say: Say): Part[] =>
  parts`Water from ${called(name, say)} makes all that it is mixed with, and the pipes after it, ${FIT[container]} until they are disinfected.`;

/** What the people of a rig should know of their water. */
export const CREW_CAUTIONS = {
  'drinking-below-survival': ({ path, leastL }) =>
    parts`${path} drinks less than ${figure(leastL, 'l')} a day, the least to survive on in mild weather (Sphere Handbook). Never ration drinking water.`,
  'observed-below-need': ({ observedL, needL }) =>
    parts`Your own figure of ${rounded(observedL, 'l')} a day is below the ${rounded(needL, 'l')} of drinking grade that the crew may need as told. Was it observed in such heat, with such work?`,
  'no-drinking-tank': () => parts`All fixed tanks are kept for washing: none holds drinking water.`,
  'washing-at-source': () =>
    parts`Washing water is not carried: it is taken at water that you marked safe for skin. Untreated water can harm skin, eyes and wounds.`,
  'heat-unknown': () =>
    parts`The heat expected was not told: drinking is reckoned for mild weather. In very hot weather it can double.`,
  'wbgt-outside-range': ({ temperatureC, fromC, toC }) =>
    parts`WBGT is estimated at ${rounded(temperatureC, '°C', 0)}, outside the ${bare(figure(fromC, '°C'))} to ${figure(toC, '°C')} that the estimate is meant for.`,
  'intake-hour-limit': ({ litres, mostL }) =>
    parts`Work may take as much as ${rounded(litres, 'l')} an hour; a body takes in ${rounded(mostL, 'l')} at most. Rest in shade, work by night. The water is carried all the same.`,
  'intake-day-limit': ({ litres, mostL }) =>
    parts`A person may need ${rounded(litres, 'l')} to drink in a day; a body takes in ${rounded(mostL, 'l')} at most. Stop working in that heat, or travel by night: no more than ${figure(12, 'l')} are carried for it.`,
  'work-rest': ({ work, workMinutes, restMinutes }) =>
    parts`In that heat ${work} work needs ${restMinutes} minutes of rest after ${workMinutes} minutes (US Army TB MED 507, acclimated people).`,
  'survival-days': ({ temperatureC, restingDays, walkingDays }) =>
    parts`At ${rounded(temperatureC, '°C', 0)} in shade people without water are expected to live about ${figure(restingDays, 'days')} at rest, ${walkingDays} when they walk by night (Adolph, 1947: resting men; from memory). Stay with the vehicle, in shade.`,
  'help-hours-unknown': ({ alarm, help }) => {
    const missing = [
      ...(alarm ? [] : ['the alarm (alarmHours)']),
      ...(help ? [] : ['help (helpHours)']),
    ].join(' and until ');
    return parts`Hours until ${missing} were not told: the water reserve may not last that long.`;
  },
  'reserve-in-one-place': ({ loss, safeL, reserveL }, say) =>
    parts`One leak, pump or tap can empty ${say(loss)}: then ${rounded(safeL, 'l')} of drinking water are left even with all full, less than the reserve of ${rounded(reserveL, 'l')}. Keep the reserve apart, in cans or a tank of its own.`,
  'heat-off-route': ({ atM }) => parts`Heat told from ${placeAt(atM)} on lies past the end of the route.`,
  'heat-without-crew': () =>
    parts`It is told how hot it is here, but not who drinks: no more water is reckoned for it. Tell the crew.`,
  'cans-kept-for-washing': () =>
    parts`The owned water cans are kept for washing: what is missing of drinking water needs others.`,
  'start-grades-assumed': () =>
    parts`Which tank is not full at the start was not told: what is kept for washing is taken for the fullest, the worst for drinking.`,
  'water-lowered': lowered,
  'washing-source-not-passed': ({ id }) =>
    parts`The washing source ${id} is no water in the corridor of the route and is left out.`,
  'washing-source-unfit': ({ id }) =>
    parts`The washing source ${id} is fit for nothing by its tags and is left out.`,
} satisfies Partial<Catalogue['cautions']>;

/** Labels and sources of water use. */
export const CREW_PHRASES = {
  'own-figure': () => parts`${OWN}`,
  'need-over-recovery': ({ feed }) =>
    parts`thrown away by reverse osmosis at the tap: ${rounded(feed, 'l', 2)} from the tank for each litre`,
  'beyond-a-body': ({ mostL }) =>
    parts`beyond the ${figure(mostL, 'l')} a day that are carried for one person`,
  'own-figure-for-all': () => parts`${OWN} for all aboard`,
  'level-sources': ({ levels, own, highOfOne }) => {
    const sources = levels.map((level) => parts`"${level}": ${LEVEL_SOURCES[level]()}`);
    const told = own ? `${OWN} where told (high end ${highOfOne} × one number, ours), else ` : '';
    return parts`${told}${joined(sources, '; ')}`;
  },
  'first-of-washing': ({ litres }) => parts`the first ${figure(litres, 'l')} of washing (ours)`,
  'pets-source': ({ sources, heat }) =>
    parts`${sources.map((source) => PETS[source]).join('; ')}${heat ? '; raised by heat as people at rest (ours)' : ''}`,
  'split-of-own-figure': ({ of }, say) =>
    parts`${OWN} for all aboard, split as the crew's parts (${say(of)})`,
  'heat-of-stretch': ({ temperatureC, wbgtC, fromM, toM, litresPerDay, addedPerDay }) => {
    const heat =
      wbgtC === null ? parts`${rounded(temperatureC ?? 0, '°C')}` : parts`WBGT ${rounded(wbgtC, '°C')}`;
    const stretch = parts`${heat} between ${placeAt(fromM)} and ${placeAt(toM)}`;
    return addedPerDay === 0
      ? parts`${stretch}: no hotter than elsewhere, so neither more water is reckoned nor less`
      : parts`${stretch}: ${rounded(litresPerDay, 'l')} a day, ${rounded(addedPerDay, 'l')} more than elsewhere`;
  },
  'use-of-grade': ({ use, grade, source }, say) => parts`${use} (${grade} grade): ${say(source)}`,
  'drinking-at-rest-mild': () => parts`drinking in mild weather at rest`,
  'drinking-at-rest-in-heat': ({ factor, wbgtC }) =>
    parts`drinking at rest × ${fixed(factor, 'count', 2)} for WBGT ${fixed(wbgtC, '°C', 0)}`,
  'drinking-at-work': ({ hours, work, litresPerHour, people }) =>
    parts`${figure(hours, 'h')} of ${work} work at ${fixed(litresPerHour, 'l', 2)} an hour and person, ${people} people`,
  'heat-source': ({ measured, fromC, toC }) => {
    const wbgt = measured
      ? parts`WBGT as told`
      : parts`WBGT estimated from temperature, humidity, sun and wind at sea level (Liljegren et al. 2008, within a degree of what was measured; ${bare(figure(fromC, '°C'))} to ${figure(toC, '°C')}; hotter where there is no wind)`;
    return parts`${wbgt}; intake by WBGT and work: US Army TB MED 507, an average acclimated person, ± 1/4 US quart an hour; at rest up to double in the hottest category (US FEMA), a straight line between and beyond (ours)`;
  },
  'tank-lost': ({ names }) =>
    parts`the ${names.length > 1 ? 'joined tanks' : 'tank'} ${names.map((name) => `"${name}"`).join(', ')}`,
  'can-lost': () => parts`one can`,
  'hours-to-help': ({ alarmHours, helpHours }) =>
    parts`${figure(alarmHours, 'h')} until the alarm and ${figure(helpHours, 'h')} until help`,
  'water-lowered-by': lowered,
  'treated-at': ({ at }) => {
    if (at === null) return parts`No treatment line: only water stated fit to drink is filled in.`;
    return at === 'filling'
      ? parts`Treated on filling: what is in the tanks is fit to drink as long as nothing untreated runs in.`
      : parts`Treated at the tap: the tanks hold untreated water, and only taps after the line give drinking water.`;
  },
} satisfies Partial<Catalogue['phrases']>;
