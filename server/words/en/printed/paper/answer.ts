import type { Commodity } from '../../../../contract/common.ts';

const SUBJECTS: Record<Commodity, string> = { fuel: 'Fuel', water: 'Water' };
const named = (name: string, place: string): string => `${name} (${place})`;
const countOf = (cans: number, commodity: Commodity): string =>
  `${cans} ${commodity} ${cans === 1 ? 'can' : 'cans'}`;

/** The answer on top of the first page, and what to do. Figures come in as they are set. */
export const ANSWER_WORDS = {
  named,
  noPlan: 'No plan keeps the reserve.',
  outOfTime: 'No plan was found in the time there was: whether there is one is not known.',
  closed: (from: string, to: string) => `The route is closed from ${from} to ${to}.`,
  holds: 'With this plan the reserve is kept all the way.',
  notAllKnown: 'Not all of this plan is known to hold.',

  unmapped: (commodity: Commodity) => `No map data tells of ${commodity} on this route.`,
  getData: (commodity: Commodity) => `Get map data that tells of ${commodity} before you go by this plan.`,
  noData: (commodity: Commodity) =>
    `${SUBJECTS[commodity]}: no map data tells of it on this route, neither where it is nor that there is none.`,
  openLeg: (commodity: Commodity, from: string, to: string) =>
    `${SUBJECTS[commodity]}: nobody knows whether it holds from ${from} to ${to}.`,
  pastTheEnd: (commodity: Commodity) =>
    `${SUBJECTS[commodity]}: not known past the end of the route. Say how far the next supply is.`,
  enough: (commodity: Commodity, length: string) =>
    `${SUBJECTS[commodity]}: enough all the way; the longest stretch from one fill to the next is ${length}.`,
  dry: (commodity: Commodity, km: string | null) =>
    `${SUBJECTS[commodity]} runs dry ${km === null ? 'on the way' : `at ${km}`}`,
  intoReserve: (commodity: Commodity, km: string | null) =>
    `${SUBJECTS[commodity]} goes into the reserve${km === null ? '' : ` at ${km}`}`,
  unknown: (commodity: Commodity, from: string, to: string) =>
    `${SUBJECTS[commodity]} is not known to hold from ${from} to ${to}`,
  without: (outcome: string) => `${outcome} without the plan.`,
  asItIs: (outcome: string, missing: string | null) =>
    `${outcome}${missing === null ? '' : `: ${missing} are missing`}.`,

  box: 'Do this',
  get: (cans: readonly { count: number; commodity: Commodity }[]) =>
    `Get ${cans.map(({ count, commodity }) => countOf(count, commodity)).join(' and ')} more than you own.`,
  fill: (commodity: Commodity, stops: readonly string[]) =>
    stops.length === 0
      ? `${SUBJECTS[commodity]}: no stop is needed.`
      : `${SUBJECTS[commodity]}: fill at ${stops.join(', ')}.`,
  carry: (cans: number, { commodity, from, to }: { commodity: Commodity; from: string; to: string }) =>
    `Carry ${countOf(cans, commodity)} full from ${from} towards ${to}`,
  pour: (kms: string) => `; pour at ${kms}.`,
  pourNone: '; pour none before.',
  stillFull: (count: number) => ` ${count} still full on arrival.`,
  moreStops: (count: number) => `${count} more`,
  moreCarries: (count: number) => `And full cans on ${count} more stretches: see the stops.`,
  turnBack: (km: string, commodity: Commodity, place: string) =>
    `Before ${km} you can still go back to ${place} with the reserve of ${commodity}.`,
  moreTurnBacks: (count: number) => `And ${count} more places to turn back: see the gauge.`,
  telephone: (place: string) => `Telephone ${place} before you leave: most hangs on it.`,
  see: (place: string) => `See that ${place} is there before you leave: most hangs on it.`,
  partlyUnknown: 'Read below which stretches nobody knows to hold.',

  breaks: 'What breaks it',
  waysOut: 'What would help, each computed again',
  noWayOut: 'Nothing was found that would help.',
  notAllTried: 'Not all was tried: the time ran out.',
};
