import type { Catalogue } from '../../parts/catalogue.ts';
import { bare, figure, rounded } from '../../parts/figures.ts';
import { joined, parts } from '../../parts/part.ts';

/** What to know about a treatment line on a trip. */
export const TREATMENT_CAUTIONS = {
  'treatment-below-target': ({ target, lacks }) => {
    const missing = lacks.map(({ germs, log }) => parts`${germs} by ${rounded(log, 'count', 2)} log`);
    return parts`The treatment line falls short of its target (${target}) even in clear water: ${joined(missing, ', ')}.`;
  },
  'treatment-unmeasured': ({ conditions }, say) =>
    parts`The treatment line is reckoned with what nobody measured: ${joined(conditions.map(say), '; ')}.`,
  'treatment-frozen': ({ stages }) =>
    parts`May have frozen, so counts for nothing until it is tested or changed: ${stages.join(', ')}.`,
  'treatment-may-freeze': ({ nightC }) =>
    parts`Nights of ${figure(nightC, '°C')} can tear membranes without showing it: drain or warm the treatment line, and count it for nothing once it has frozen.`,
  'boiling-height-unknown': () =>
    parts`The heights of the route are not known, so boiling is held to the longer rule: 3 minutes, as above 2,000 m (CDC).`,
  'tap-flow-unknown': ({ tap, missing }, say) =>
    parts`Flow at tap ${tap} cannot be estimated: ${joined(missing.map(say), ', ')} not told. Measure it, or fill that in.`,
  'tap-starves': ({ tap, use, lPerMin, leastLPerMin }) =>
    parts`Tap ${tap} starves: ${rounded(lPerMin, 'l', 2)}/min, a ${use} tap wants ${bare(figure(leastLPerMin, 'l'))} (ours).`,
  'tap-not-drinking': ({ tap, use }) =>
    parts`Tap ${tap} (${use}) comes before the target is reached: only for water that is fit to drink already.`,
  'cartridge-spent': ({ name, litres, beyondL, backwash }) =>
    parts`${name} does not last the trip: ${rounded(litres, 'l', 0)} go through, ${rounded(beyondL, 'l', 0)} more than it has left. ${backwash ? 'Backwash it on the way, or carry a spare' : 'Carry a spare'}.`,
  'treatment-at-tap': () =>
    parts`Treatment is at the tap: tank and pipes before it hold raw water, and stay of that class until they are cleaned and disinfected (WHO/WEDC Technical Note 3).`,
  'osmosis-waste': ({ feed }) =>
    parts`Reverse osmosis takes ${rounded(feed, 'l', 2)} from the tank for each litre at the tap; the need for drinking water is reckoned with it.`,
} satisfies Partial<Catalogue['cautions']>;

/** Labels of pressures and litres. */
export const TREATMENT_PHRASES = {
  'pump-untold': () => parts`the pump`,
  'drop-untold': ({ stage }) => parts`the pressure drop of ${stage}`,
  'hose-of': ({ lengthM, boreMm }) => parts`hose of ${figure(lengthM, 'm')}, ${boreMm} mm`,
  'tap-named': ({ name }) => parts`tap ${name}`,
  'pump-at-flow': () => parts`pump at that flow`,
  'days-at-rate': ({ days, litresPerDay }) =>
    parts`${rounded(days, 'days')} at ${figure(litresPerDay, 'l')} a day`,
  'thrown-away': () => parts`thrown away by reverse osmosis`,
} satisfies Partial<Catalogue['phrases']>;
