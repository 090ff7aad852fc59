import type { TripFile } from '../../server/contract/trip.ts';

type Told = NonNullable<TripFile['extracts']>;

/** What the trip tells of its extracts, with more told of one of them. */
export function toldExtract(known: Told, file: string, more: Omit<Told[number], 'file'>): Told {
  const own = known.find((entry) => entry.file === file);
  return [...known.filter((entry) => entry !== own), { ...own, ...more, file }];
}
