/** What is done at a halt, litres as they are set; null where it is not done. */
export interface HaltWords {
  readonly what: string;
  readonly arrive: string | null;
  readonly fill: string | null;
  readonly letGo: string | null;
  readonly leave: string | null;
  readonly cans: number;
}

/** What stands on the screen of a file to take along around its answer. Figures come in as they are set. */
export const CAB_SCREEN_WORDS = {
  title: (route: string) => `${route}, to take along`,
  offline: 'works offline',
  view: 'Cab view',
  iAmAt: 'I am at',
  change: 'Change the place',
  nextIn: (name: string, km: string) => `${name} in ${km}`,
  lost: 'No answer for this place: it is not on the route.',
  lastTurn: (what: string) => `Last turning back for ${what}`,
  kmLabel: 'Place along the route',
  less: (what: string) => `Less: ${what}`,
  more: (what: string) => `More: ${what}`,
  ofLength: (km: string) => `of ${km}`,
  night: 'Red',
  nightOff: 'Plain',
  nightLabel: 'Red on black, for the night',

  findMe: 'Find my place',
  finding: 'Looking for your place…',
  fromPosition: (offM: string) => `from position, ${offM} off the route`,
  fromHand: 'entered by hand',
  position: {
    missing: 'No position is to be had here. Enter the place.',
    refused: 'The position was refused. Enter the place, or allow it.',
    failed: 'No position was found. Try in the open, or enter the place.',
  },
  far: (distance: string) =>
    `You are ${distance} off the route: no place of it fits. No answer is given for that place.`,
  rough: (distance: string) => `The position is only known to ${distance}. Enter the place.`,
  several: 'The route comes by here more than once. Which is it?',
  place: (km: string, off: string) => `${km}, ${off} off`,

  stopHere: (name: string) => `At ${name}`,
  before: 'Not filled yet',
  after: 'Filled, leaving',

  gauge: (what: string) => `${what}, aboard`,
  notRead: 'not read',
  tapToRead: 'tap to read',
  readAgain: (km: string) => `read at ${km}: read again`,
  marks: (marks: string, litres: string) => `${marks} · ${litres}`,
  mark: (eighths: number) => EIGHTHS[eighths] ?? '',
  tank: (name: string) => `Tank ${name}`,
  gaugeStep: (what: string) => `gauge of ${what}, an eighth`,
  litreStep: (what: string, unit: string) => `${what}, in ${unit}`,
  canStep: (what: string) => `full cans of ${what}`,
  fullCans: (count: number) => (count === 1 ? '1 can full' : `${count} cans full`),
  planned: (figure: string) => `As planned here: ${figure}.`,
  lowerMark: 'Between two marks take the lower one. Count full cans only.',
  readAt: (km: string) => `read at ${km}`,
  read: (what: string) => `Read ${what}`,
  readAll: (what: string, litres: string) => `${litres} of ${what} aboard`,

  done: 'Done',

  next: 'Next',
  pour: (what: string) => `Pour a can of ${what}`,
  halt: ({ what, arrive, fill, letGo, leave, cans }: HaltWords) =>
    `${what}: ${[
      ...(arrive === null ? [] : [`come with ${arrive}`]),
      ...(fill === null ? [] : [`fill ${fill}`]),
      ...(letGo === null ? [] : [`let ${letGo} go, for the sake of a permitted mass`]),
      ...(leave === null ? [] : [`leave with ${leave}`]),
      ...(cans === 0 ? [] : [cans === 1 ? '1 can full' : `${cans} cans full`]),
    ].join(', ')}`,
  gaveNothingHead: 'A stop gave nothing?',
  nothingNext: 'Nothing more on the way.',
  call: (phone: string) => `Call ${phone}`,
  hours: (hours: string) => `hours ${hours}`,
  hoursUnknown: 'hours not known',
  noTelephone: 'no telephone listed',
  gaveNothing: (name: string, what: string) => `${name} gave no ${what}`,
  without: (name: string, what: string) => `Reckoned without ${what} at ${name}. Undo`,

  kept: 'What you enter stays on this telephone.',
  notKept: 'This telephone keeps no entries: they are gone when the file is closed.',
  noScript: 'The cab view needs a browser of 2022 or newer, with scripts. All that is below works without.',
  noPlan: {
    none: 'There is no plan that keeps the reserve. What is said here takes full tanks at every supply that counts.',
    'out-of-time':
      'Whether there is a plan that keeps the reserve was not found out. What is said here takes full tanks at every supply that counts.',
  },
  papers: {
    answer: 'The plan in short',
    leftOut: (picture: string) => `Left out, since it is too much for a small screen: ${picture}.`,
  },
  aid: 'A planning aid, not a guarantee. Carry the reserve.',
};

export type CabScreenWords = typeof CAB_SCREEN_WORDS;

const EIGHTHS = ['empty', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞', 'full'];
