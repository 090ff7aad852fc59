import type { Commodity } from '../../../contract/common.ts';

/** So short that a small screen shows which is meant. */
const SHORT: Record<Commodity, string> = { fuel: 'Fuel', water: 'Water' };

/** Names and words of the points and days in files to take along. Figures come in as they are set. */
export const EXPORT_WORDS = {
  stopName: (commodities: readonly Commodity[], name: string) =>
    `${commodities.map((each) => SHORT[each]).join('+')} ${name}`,
  turnBackName: (commodity: Commodity, km: string) => `Back ${SHORT[commodity]} ${km}`,
  pourName: (commodity: Commodity, km: string) => `Pour ${SHORT[commodity]} ${km}`,
  dryName: (commodity: Commodity, km: string) => `Dry ${SHORT[commodity]} ${km}`,
  reserveName: (commodity: Commodity, km: string) => `Reserve ${SHORT[commodity]} ${km}`,
  cautionName: (km: string) => `Mind km ${km}`,
  nightName: (number: number, name: string | null) =>
    name === null ? `Night ${number}` : `Night ${number} ${name}`,
  endName: (isStart: boolean, name: string | null) => name ?? (isStart ? 'Start' : 'End'),

  at: (km: string) => `km ${km}`,
  arrive: (litres: string) => `arrive with ${litres} l`,
  fill: (litres: string) => `fill ${litres} l`,
  letGo: (litres: string) => `let ${litres} l go, for the sake of a permitted mass`,
  leave: (litres: string, cans: number) =>
    cans === 0
      ? `leave with ${litres} l`
      : `leave with ${litres} l, ${cans} ${cans === 1 ? 'can' : 'cans'} full`,
  next: (name: string, km: string) => `next ${name} in ${km} km`,
  turnBackBefore: (km: string) => `turn back before km ${km}`,
  phone: (number: string) => `telephone ${number}`,
  hours: (hours: string) => `hours ${hours}`,
  turnBack: (commodity: Commodity, name: string) =>
    `Last place from which one comes back to ${name} with the reserve of ${commodity}.`,
  pour: (commodity: Commodity) => `Pour a can of ${commodity} into the tank here.`,
  dry: (commodity: Commodity) => `Without a plan ${commodity} runs dry here.`,
  reserve: (commodity: Commodity) => `Without a plan ${commodity} is at the reserve from here.`,
  notKnown: 'not known whether that is reached with the reserve',
  noPlan: {
    none: 'There is no carry plan that keeps the reserve. Points are those of full tanks and empty cans.',
    'out-of-time':
      'No carry plan was found in the time there was: whether there is one is not known. Points are those of full tanks and empty cans.',
  },
  notAllKnown: 'Not all stretches of the plan are known to hold.',
  noData: (commodity: Commodity) => `No map data tells of ${commodity} on this route.`,
  standing:
    'Planning aid, not a guarantee: confirm every point, carry the reserve, never ration drinking water.',
  credit: (names: string) => `Map data: ${names}`,

  columns: {
    kind: 'kind',
    commodity: 'commodity',
    name: 'name',
    at: 'at (km)',
    lon: 'longitude (degrees)',
    lat: 'latitude (degrees)',
    arrive: 'arrive with (l)',
    fill: 'fill (l)',
    leave: 'leave with (l)',
    words: 'what to do or know',
  },

  calendar: {
    day: (number: number, from: string, to: string, night: string) =>
      `Day ${number}: km ${from} to ${to}, ${night}`,
    confirmFrom: (commodity: Commodity, days: number) =>
      `Confirmations of ${commodity} hold from today on (${days} days before leaving)`,
    confirm: 'Confirm every point of the plan; print the list',
    alarm: (name: string) => `If nothing was heard since ${name}: call for help now`,
  },
};
