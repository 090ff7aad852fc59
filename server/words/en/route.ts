import type { Catalogue } from '../catalogue.ts';
import { fixed, kmOf, placeAt } from '../figures.ts';
import { parts } from '../part.ts';

export const ROUTE_CAUTIONS = {
  'no-cover': ({ commodity }) => parts`No extract shows ${commodity} here: reckoned as dry.`,
  'start-assumed-full': ({ commodity }) =>
    parts`What ${commodity} is aboard at the start was not told: reckoned as full. Say how much there is.`,
  'onward-unknown': () =>
    parts`How far it is from the end of the route to the next supply was not told. Say so: 0 km when it is there.`,
  'camp-off-route': (facts) =>
    'pastEndAtM' in facts
      ? parts`The camp at ${placeAt(facts.pastEndAtM)} lies past the end of the route and is left out.`
      : parts`The camp "${facts.name ?? 'unnamed'}" is ${fixed(kmOf(facts.offM), 'km')} off the route and is left out.`,
  'stay-off-route': ({ atM }) =>
    parts`A stay at ${placeAt(atM)} lies past the end of the route and is charged at its end.`,
} satisfies Partial<Catalogue['cautions']>;
