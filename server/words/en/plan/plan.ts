import type { Commodity } from '../../../contract/common.ts';
import type { LaidDepot, NamedStop, OtherStop } from '../../../core/phrases/plan/plan.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import type { Catalogue, Say } from '../../parts/catalogue.ts';
import { exactPlace, figure, fixed, kmOf, placeAt, rounded, upToTenth } from '../../parts/figures.ts';
import { metricText } from '../../parts/metric.ts';
import { joined, type Part, type Parts, parts } from '../../parts/part.ts';
import { called } from '../places/called.ts';
import { namedPlace } from '../places/named-place.ts';

const canWord = (count: number): string => (count === 1 ? 'can' : 'cans');

export const PLAN_CAUTIONS = {
  'plan-lets-go': ({ commodity, litres }) =>
    parts`${rounded(upToTenth(litres), 'l')} of ${commodity} have to be let go here: with all of it and the other supplies filled, a permitted mass is broken.`,
  'plan-across-no-data': ({ commodity }) =>
    parts`No extract shows ${commodity} on part of this stretch: the plan takes it as dry.`,
  'plan-across-sketch': ({ commodity }) =>
    parts`Part of this stretch is a straight line where a road is meant: the ${commodity} it takes is a guess.`,
  'plan-cans-at-start': ({ commodity, cans }) =>
    parts`${cans} ${commodity} ${cans === 1 ? 'can is' : 'cans are'} to be filled before the start.`,
  'plan-waits-for-opening': ({ name, hours }, say) =>
    parts`Up to ${rounded(upToTenth(hours), 'h')} of waiting for ${called(name ?? 'a supply', say)} to open are reckoned with, by its mapped hours. Ask, and say how long the wait is.`,
  'plan-weak-evidence': ({ name, evidence }, say) =>
    parts`${called(name ?? 'A supply', say)} is known only as ${evidence}: telephone before you depend on it.`,
  'plan-onward-unknown': ({ commodity }) =>
    parts`How far the next ${commodity} is past the end was not told: the plan reaches to the end of the route and no farther.`,
  'plan-ways-left-out': () =>
    parts`There are very many ways over the supplies that do not give all that is wanted: only those with most aboard for least were looked at. Another may be better.`,
  'plan-cans-to-get': ({ commodity, cans, owned }) =>
    parts`${cans} more ${commodity} ${cans === 1 ? 'can is' : 'cans are'} to be got: ${owned === 0 ? 'none is' : owned === 1 ? '1 is' : `${owned} are`} owned.`,
  'water-not-planned': () =>
    parts`Water is not planned: no extract tells of it. This plan holds for the fuel alone; find out first where there is water, or carry all that is drunk`,
  'fuel-not-planned': () =>
    parts`Fuel is not planned: no extract tells of it. This plan holds for the water alone; find out first where there is fuel, or carry all that is used`,
  'plan-supplies-left-out': ({ commodity, passings, lookedAt, withinM }) =>
    parts`Of ${passings} passings of ${commodity} supplies the plan looks at ${lookedAt}: each one left out has another within ${figure(kmOf(withinM), 'km')} that is known as well and no farther off. A plan with one of those left out may be better.`,
  'can-place-unknown': ({ commodity }) =>
    parts`Whether ${commodity} cans are inside the cabin cannot be told: say where they and the cabin are.`,
  'plan-stop-unknown': ({ stops }, say) =>
    parts`What was told of ${namesOf(stops, say)} is of no use: the route does not come by.`,
  'plan-must-stop-uncounted': ({ stops }, say) =>
    parts`The plan must stop at ${namesOf(stops, say)}, which do not count: look up why, and confirm what you found out.`,
  'plan-stop-shut': ({ stops }, say) =>
    parts`Left out, since by mapped hours there is no opening in the days after you may come: ${namesOf(stops, say)}. Ask, and say how long the wait is.`,
  'plan-treats-too-little': ({ stops }, say) =>
    parts`Left out, since the line treats less in a whole day than is drunk: ${namesOf(stops, say)}.`,
  'plan-night-at-supply': ({ name }, say) =>
    parts`The night is spent at ${called(name ?? 'the supply', say)}, with its water; gone on from there the same day, one would fall on the way, with what is carried.`,
  'plan-flows-too-little': ({ stops }, say) =>
    parts`Fills nothing, since it gives no more in a whole day than is used meanwhile: ${namesOf(stops, say)}.`,
  'plan-flow-unknown': ({ stops }, say) =>
    parts`How fast the treatment line runs is not known: treating takes no time here (${namesOf(stops, say)}).`,
  'plan-untreated-water': ({ stops }, say) =>
    parts`Treated only at the tap, so kept out of the cans for drinking water: ${namesOf(stops, say)}.`,
} satisfies Partial<Catalogue['cautions']>;

/** No more than this are named (ours). */
const NAMED = 4;

/** Each name once. */
function namesOf(stops: readonly NamedStop[], say: Say): Part[] {
  const names = new Map<string, Parts>();
  for (const stop of stops) {
    const name =
      'name' in stop ? parts`${stop.name}` : parts`the ${say(stop.kind)} at ${placeAt(stop.atM, 0)}`;
    const text = metricText(name);
    if (!names.has(text)) names.set(text, name);
  }
  const more = names.size - NAMED;
  const named = joined([...names.values()].slice(0, NAMED), ', ');
  return more > 0 ? parts`${named} and ${more} more` : named;
}

/** The first of some names, and how many more there are: a stop in a town may have dozens. */
function firstOf(names: readonly Parts[]): Parts {
  const more = names.length - NAMED;
  const named = joined(names.slice(0, NAMED), ' and ');
  return more > 0 ? parts`${named} and ${more} more` : named;
}

const PERMITTED_WORDS = {
  total: 'mass',
  front: 'load of the front axle',
  rear: 'load of the rear axle',
} as const;

export const PLAN_PHRASES = {
  'stretch-lacks': ({ commodity, from, to, missingL, cans, startL, littleLeftOut }, say) => {
    const tanks =
      startL === null ? parts`full tanks` : parts`the ${rounded(startL, 'l')} aboard at the start`;
    const aboard = parts`${tanks} and ${cans} ${canWord(cans)}`;
    const little = littleLeftOut ? ', what little is to be had on the way left out' : '';
    return parts`From ${namedPlace(from, say)} to ${namedPlace(to, say)} ${rounded(upToTenth(missingL), 'l')} of ${commodity} are missing with ${aboard}${little}.`;
  },
  'masses-forbid': () => parts`With the cans that it takes the vehicle is over a permitted mass.`,
  'over-at-start': ({ mass, overKg, lessL }) => {
    const less = COMMODITIES.flatMap((commodity) => {
      const litres = lessL[commodity];
      return litres === null ? [] : [parts`${rounded(upToTenth(litres), 'l')} of ${commodity}`];
    });
    const fluids = less.length === 0 ? '' : parts`, or start with ${joined(less, ' or ')} less`;
    return parts`At the start the vehicle is ${rounded(upToTenth(overKg), 'kg')} over the permitted ${PERMITTED_WORDS[mass]}, with no can full: leave so much behind${fluids}.`;
  },
  'detours-forbid': () =>
    parts`Fuel alone and water alone could be done; the detours to both together use up more than there is.`,
  'together-not-found-out': () =>
    parts`Fuel alone and water alone could be done; whether the detours to both or a permitted mass forbid it was not found out in the time there was.`,
  'plans-hang-on': ({ names, atM }, say) =>
    parts`Every plan hangs on ${firstOf(names.map((name) => called(name ?? 'a supply', say)))} (${placeAt(atM, 0)}): when nothing is to be had there, neither the next supply nor the one before is reached.`,
  'with-filling-first': ({ fills }) =>
    parts`Fill at least ${joined(
      fills.map(({ commodity, litres }) => parts`${rounded(litres, 'l')} of ${commodity}`),
      ' and ',
    )} before leaving: then it can be done.`,
  'with-more-cans': ({ cans, moreKg }) =>
    parts`With ${cans.map(({ commodity, count }) => cansOf(count, commodity)).join(' and ')} more it can be done: ${rounded(moreKg, 'kg', 0)} more when they are full.`,
  'with-less-washing': ({ cutPercent, savedL }) => {
    const given =
      cutPercent === 100
        ? parts`Without washing and showers`
        : parts`With ${figure(cutPercent, '%')} less water for washing and showers`;
    return parts`${given}, teeth, hands and wounds aside, ${fixed(savedL, 'l')} a day less are used and it can be done. Drinking water stays as it is.`;
  },
  'with-longer-days': ({ hours, insteadOfHours }) =>
    parts`Driving ${hours} hours a day in place of ${insteadOfHours} it can be done: the way takes fewer days, so less water. Driving faster is never reckoned with.`,
  'with-depots': ({ depots }, say) =>
    parts`${joined(
      depots.map((depot) => laidDepot(depot, say)),
      '; ',
    )}: so it can be done.`,
  'by-other-stops': ({ stops }, say) => byOtherStops(stops, say),
} satisfies Partial<Catalogue['phrases']>;

const cansOf = (count: number, commodity: Commodity): string => `${count} ${canWord(count)} of ${commodity}`;

function laidDepot({ commodity, cans, litres, atM, latestFrom }: LaidDepot, say: Say): Part[] {
  const why =
    latestFrom === null
      ? ''
      : parts`, the latest place that is reached with the reserve from ${namedPlace(latestFrom, say)}`;
  return parts`${cans} ${canWord(cans)} (${rounded(litres, 'l')}) of ${commodity} laid beforehand at ${exactPlace(atM)}${why}`;
}

function byOtherStops(stops: readonly OtherStop[], say: Say): Part[] {
  const named = (stop: OtherStop) => otherStop(stop, say);
  const toCall = stops.filter(({ counts }) => !counts);
  if (toCall.length === 0) return parts`By way of ${joined(stops.map(named), ' and ')} it can be done.`;
  const others = stops.filter(({ counts }) => counts).map(named);
  const has = toCall.map((stop) => parts`${named(stop)} has ${stop.commodity} fit for it`);
  const beside = others.length === 0 ? '' : parts`by way of ${joined(others, ' and ')} as well `;
  return parts`Telephone first: if ${joined(has, ' and ')}, ${beside}it can be done. As mapped ${toCall.length === 1 ? 'it does' : 'they do'} not count.`;
}

const otherStop = ({ name, kind, atM, detourM }: OtherStop, say: Say): Part[] =>
  parts`${name ?? parts`the ${say(kind)}`} (${placeAt(atM, 0)}, ${fixed(kmOf(2 * detourM), 'km')} there and back)`;
