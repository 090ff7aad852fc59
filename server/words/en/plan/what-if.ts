import type { Catalogue } from '../../parts/catalogue.ts';
import { exactPlace, figure, placeAt, rounded } from '../../parts/figures.ts';
import { joined, type Part, parts } from '../../parts/part.ts';
import { called } from '../places/called.ts';
import { namedPlace } from '../places/named-place.ts';

export const WHAT_IF_CAUTIONS = {
  'turn-round-off-route': ({ atM }) =>
    parts`Turning round at ${placeAt(atM)} is not on the route, or the way back from there cannot be driven.`,
  'standing-fuel-not-told': () =>
    parts`What fuel goes while the vehicle stands (idling, air conditioning, heater) was not told: waiting is reckoned for water only.`,
  'past-end-not-told': () =>
    parts`How far the next supply is past the end was not told: on the last stretch what is left, and the least to have aboard of the gauge table, reach to the end of the route and no farther.`,
  'mishap-before-bound-stop': () =>
    parts`A stop that does not give all that is wanted is left with less after a mishap on the way to it: the rows of mishaps reach only to the stop itself.`,
  'what-if-rows-left-out': ({ failures, rows }) =>
    parts`There is no plan, so every supply that counts is taken as used: of ${failures} that may fail the ${rows} without which least is left are told.`,
  'heat-not-told': () =>
    parts`How hot it will be was not told with the crew: what more heat does is not reckoned. Tell it: heat can multiply the need for water.`,
} satisfies Partial<Catalogue['cautions']>;

const END_WORDS = { low: 'Low', typical: 'Typical', high: 'High' } as const;

const litresADay = (litres: number): Part[] => parts`${rounded(litres, 'l')} a day`;

export const WHAT_IF_PHRASES = {
  'stop-gives-none': ({ commodity, names, others }, say) =>
    parts`${joined(
      names.map((name) => called(name, say)),
      ' and ',
    )} ${names.length === 1 ? 'gives' : 'give'} no ${commodity}${others === 0 ? '' : `, nor ${others === 1 ? 'does the one other supply' : `do the ${others} other supplies`} of that stop`}: on from there with what is aboard.`,
  'container-loses-all': ({ commodity, tank }) =>
    tank === null
      ? parts`A can loses all its ${commodity}.`
      : parts`The tank "${tank}" loses all its ${commodity}; it is taken to be mended, so that cans can be poured in.`,
  'water-pump-fails': ({ tanksApart, raw }) =>
    raw
      ? parts`The water pump fails, and with it the treatment at the tap: what was filled untreated is not fit to drink, in cans neither.`
      : parts`The water pump fails: the fixed tanks are out of reach${tanksApart ? ' but for those apart' : ''}, only cans are left.`,
  waiting: ({ days }) => parts`Waiting ${days} ${days === 1 ? 'day' : 'days'} (repair, weather, a river).`,
  'use-all-the-way': ({ commodity, end, rate }) =>
    parts`${END_WORDS[end]} use of ${commodity} all the way (${commodity === 'fuel' ? rounded(rate, 'l/100 km') : litresADay(rate)}).`,
  'hotter-than-told': ({ byC, waterLPerDay }) =>
    parts`${warmerBy(byC)} hotter than told${waterLPerDay === null ? '' : parts` (${litresADay(waterLPerDay)})`}.`,
  'treatment-line-fails': ({ waters }) =>
    waters === 0
      ? parts`The treatment line fails: no water that is used counts only thanks to it, so nothing changes.`
      : parts`The treatment line fails: ${waters === 1 ? 'one water that is' : `${waters} waters that are`} used no longer ${waters === 1 ? 'counts' : 'count'}.`,
  'treatment-line-fails-under-way': ({ name }, say) =>
    parts`The treatment line fails under way: what was filled untreated at ${called(name ?? 'the supply', say)} is not fit to drink. Boiling and disinfecting by hand are not reckoned.`,
  'turning-round': ({ atM }) =>
    parts`Turning round${atM === null ? '' : parts` at ${exactPlace(atM)}`}, back to the supply behind.`,
  'step-more-use': ({ percent }) => parts`${figure(percent, '%')} more use`,
  'step-slower': ({ percent }) => parts`${figure(percent, '%')} slower`,
  'step-more-allowance': ({ points }) => parts`${points} percent points more allowance for bends`,
  'step-hotter': ({ byC }) => parts`${warmerBy(byC)} hotter`,
  'back-with-the-reserve': ({ commodity, atM, backTo }, say) =>
    parts`Before ${exactPlace(atM)} you can still go back to ${namedPlace(backTo, say)} with the reserve of ${commodity}.`,
} satisfies Partial<Catalogue['phrases']>;

const warmerBy = (degrees: number): Part[] =>
  parts`${{ figure: degrees, unit: '°C', difference: true } as const}`;
