import type { Commodity, Evidence, Verdict } from '../../../contract/common.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { CabAnswer } from '../../../core/cab/cab-answer.ts';
import type { WayState } from '../../../core/cab/side-state.ts';

const FUELS: Record<FuelKind, string> = {
  diesel: 'diesel',
  petrol: 'petrol',
  lpg: 'LPG',
  cng: 'CNG',
  lng: 'LNG',
  e85: 'E85',
  kerosene: 'kerosene',
};

/** A supply that is spoken of: its name, and how far along the road it is. Figures come in as they are set. */
interface To {
  readonly what: string;
  readonly name: string;
  readonly km: string;
}

/** What a vehicle on the way can do. */
export const CAB_ANSWER_WORDS = {
  content: (commodity: Commodity, kind: FuelKind) => (commodity === 'water' ? 'water' : FUELS[kind]),

  heads: {
    on: 'Go on',
    back: 'Turn back',
    'reserve-on': 'Go on, at the cost of the reserve',
    'reserve-back': 'Turn back, at the cost of the reserve',
    reserve: 'Either way costs the reserve',
    unknown: 'Not known',
    none: 'Neither way is sure',
    unread: 'Read the gauges',
  } satisfies Record<CabAnswer, string>,

  missing: (what: string, litres: string) => `${what} is ${litres} short of the way on with the reserve.`,
  todo: {
    on: 'All that is needed gets to its next supply with the reserve.',
    back: 'What is aboard gets back with the reserve, and not on.',
    'reserve-on': 'There is no way back. Slow down, use less, and fill at the first chance.',
    'reserve-back': 'What is aboard does not get there. It gets back, with less than the reserve.',
    reserve: 'Choose the way that leaves more, slow down, and use less.',
    unknown: 'Nobody can say from here whether you get on. Do not take it for yes.',
    none: 'Stop while there is water and shade. Stay with the vehicle, and call for help now.',
    unread: 'Say what the gauges show, and how many cans are full.',
  } satisfies Record<CabAnswer, string>,

  onHeads: {
    enough: 'Go on: yes',
    'into-reserve': 'Go on: only at the cost of the reserve',
    short: 'Go on: no',
    unknown: 'Go on: not known',
  } satisfies Record<Verdict, string>,

  backHeads: {
    enough: 'Go back: yes',
    'into-reserve': 'Go back: only at the cost of the reserve',
    short: 'Go back: no',
    unknown: 'Go back: not known',
  } satisfies Record<Verdict, string>,
  backFor: (km: string) => `Go back: yes, for ${km} more`,
  noWayBack: 'Go back: no, the way cannot be driven back',

  /** One way for one commodity. */
  enough: ({ what, name, km }: To, overL: string, lasts: string | null) =>
    `${what} to ${name}, ${km}: ${overL} over the reserve${lasts === null ? '' : `, worth some ${lasts}`}.`,
  forDays: (days: string) => `${days}\u00a0days`,
  intoReserve: ({ what, name, km }: To, missingL: string, leftL: string) =>
    `${what} to ${name}, ${km}: ${missingL} short of the reserve, ${leftL} left there.`,
  short: ({ what, name, km }: To, missingL: string, dryKm: string | null) =>
    `${what} to ${name}, ${km}: ${missingL} short with the reserve${dryKm === null ? '' : `, runs dry at ${dryKm}`}.`,
  unknown: ({ what, name, km }: To, why: string) => `${what} to ${name}, ${km}: not known, ${why}.`,
  noBack: (what: string) => `${what}: the way cannot be driven back.`,
  why: {
    'no-map': 'no map data tells of supplies on the way',
    closed: 'a stretch on the way may be closed',
    bridge: 'the route has a gap there',
    via: 'the route is only a straight line there',
    sparse: 'the route is only straight lines there',
    onward: 'what comes behind the end of the route was not told',
  } satisfies Record<NonNullable<WayState['unknownBy']>, string>,
  until: (km: string, name: string) => `Before ${km} you can still turn back to ${name}.`,
  beyondPlan: (what: string) =>
    `${what}: two supplies running gave nothing. This file does not reckon that far.`,
  unread: (what: string) => `${what}: not read yet.`,
  stale: (what: string, km: string) => `${what} was read at ${km}. Read it again.`,

  rests: 'This rests on',
  restsOn: ({ what, name, km }: To, evidence: string | null) =>
    `${name}, ${km}, giving ${what}${evidence === null ? '' : ` (${evidence})`}`,
  evidence: {
    confirmed: 'confirmed',
    stated: 'stated on the map',
    implied: 'only implied by the map',
    doubtful: 'doubtful',
  } satisfies Record<Evidence, string>,
  restsOnPlan: 'use on the road as planned, stops filled as planned',
  restsOnGaps: 'there being no plan: full tanks at every supply that counts, empty cans',
  grades: 'Part of the water is kept for washing, in the share that the plan has here.',

  help: (hours: string) => `Help takes some ${hours}\u00a0h to come, as the trip says.`,
  helpUnknown: 'How long help takes to come was not told.',
  waterLasts: (days: string) => `All the water aboard lasts some ${days}\u00a0days at the high use.`,
  neverRation:
    'Never ration drinking water. Call whoever has your plan, and the emergency number of the land.',
  others: 'Other supplies that count',
  other: (what: string, name: string, km: string) => `${name}, ${what}, ${km}`,
  behind: (km: string) => `${km} back`,
  ahead: (km: string) => `${km} on`,
  offRoad: (km: string) => `${km} off the road`,
  notReckoned: 'Whether they are reached is not reckoned here.',
};

export type CabAnswerWords = typeof CAB_ANSWER_WORDS;
