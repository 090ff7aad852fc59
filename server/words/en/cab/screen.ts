/** What is done at a halt, litres as they are set; null where it is not done. */
interface HaltWords {
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
  change: 'Change the km',
  nextIn: (name: string, km: string) => `${name} in ${km}\u00a0km`,
  lost: 'No answer for this place: it is not on the route.',
  lastTurn: (what: string) => `Last turning back for ${what}`,
  km: 'km',
  kmLabel: 'Kilometre along the route',
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
    missing: 'No position is to be had here. Enter the km.',
    refused: 'The position was refused. Enter the km, or allow it.',
    failed: 'No position was found. Try in the open, or enter the km.',
  },
  far: (distance: string) =>
    `You are ${distance} off the route: no km fits. No answer is given for that place.`,
  rough: (distance: string) => `The position is only known to ${distance}. Enter the km.`,
  several: 'The route comes by here more than once. Which is it?',
  metres: (figure: string) => `${figure}\u00a0m`,
  kilometres: (figure: string) => `${figure}\u00a0km`,
  place: (km: string, off: string) => `km\u00a0${km}, ${off} off`,

  stopHere: (name: string) => `At ${name}`,
  before: 'Not filled yet',
  after: 'Filled, leaving',

  gauge: (what: string) => `${what}, aboard`,
  notRead: 'not read',
  tapToRead: 'tap to read',
  readAgain: (km: string) => `read at km\u00a0${km}: read again`,
  litres: (figure: string) => `${figure}\u00a0L`,
  marks: (marks: string, litres: string) => `${marks} · ${litres}\u00a0L`,
  mark: (eighths: number) => EIGHTHS[eighths] ?? '',
  tank: (name: string) => `Tank ${name}`,
  gaugeStep: (what: string) => `gauge of ${what}, an eighth`,
  litreStep: (what: string) => `${what}, one litre`,
  canStep: (what: string) => `full cans of ${what}`,
  fullCans: (count: number) => (count === 1 ? '1 can full' : `${count} cans full`),
  planned: (figure: string) => `As planned here: ${figure}\u00a0L.`,
  lowerMark: 'Between two marks take the lower one. Count full cans only.',
  readAt: (km: string) => `read at km\u00a0${km}`,
  read: (what: string) => `Read ${what}`,
  readAll: (what: string, litres: string) => `${litres}\u00a0L of ${what} aboard`,

  done: 'Done',

  next: 'Next',
  pour: (what: string) => `Pour a can of ${what}`,
  halt: ({ what, arrive, fill, letGo, leave, cans }: HaltWords) =>
    `${what}: ${[
      ...(arrive === null ? [] : [`come with ${arrive}\u00a0L`]),
      ...(fill === null ? [] : [`fill ${fill}\u00a0L`]),
      ...(letGo === null ? [] : [`let ${letGo}\u00a0L go, for the sake of a permitted mass`]),
      ...(leave === null ? [] : [`leave with ${leave}\u00a0L`]),
      ...(cans === 0 ? [] : [cans === 1 ? '1 can full' : `${cans} cans full`]),
    ].join(', ')}`,
  gaveNothingHead: 'A stop gave nothing?',
  nothingNext: 'Nothing more on the way.',
  atKm: (km: string) => `km\u00a0${km}`,
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

const EIGHTHS = ['empty', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞', 'full'];
