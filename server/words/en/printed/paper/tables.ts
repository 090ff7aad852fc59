import type { Commodity } from '../../../../contract/common.ts';
import { column } from '../shared/columns.ts';

/** Words of the tables and lists of the sheet. Figures come in as they are set. */
export const TABLE_WORDS = {
  trouble: {
    columns: {
      stretch: column('from, to'),
      of: column('of'),
      verdict: column('is'),
      length: column('length', 'km'),
      need: column('need', 'l'),
      reserve: column('reserve', 'l'),
      missing: column('missing', 'l'),
      dry: column('dry at', 'km'),
    },
    stretch: (from: string, to: string) => `${from} to ${to}`,
    rest: (count: number) => `And ${count} more ${count === 1 ? 'stretch' : 'stretches'}, all enough.`,
    more: (count: number, verdict: string) => `And ${count} more: ${verdict}.`,
    withoutPlan: 'As the route stands, with full tanks at every supply that counts and cans empty.',
    ofPlan: 'Of the plan.',
  },
  stops: {
    columns: {
      number: column('no.'),
      at: column('at', 'km'),
      place: column('stop, co-ordinates, whom to ask'),
      of: column('of'),
      arrive: column('arrive', 'l'),
      fill: column('fill', 'l'),
      leave: column('leave', 'l'),
      next: column('next'),
      back: column('back before', 'km'),
    },
    start: 'Start',
    end: 'End',
    point: (lat: string, lon: string) => `${lat}, ${lon}`,
    north: 'N',
    south: 'S',
    east: 'E',
    west: 'W',
    telephone: (number: string) => `telephone ${number}`,
    noTelephone: 'no telephone listed',
    hours: (hours: string) => `hours ${hours}`,
    noHours: 'hours not known',
    open: 'open then',
    shut: 'shut at some of that time',
    own: 'your own: see that it is there',
    off: (length: string) => `${length} off the route`,
    most: (litres: string) => `no more than ${litres} to be had`,
    into: (litres: string, into: string) => `${litres} into ${into}`,
    letGo: (litres: string, from: string) => `${litres} let go from ${from}`,
    tanks: 'the tanks',
    cans: (count: number) => (count === 1 ? '1 can' : `${count} cans`),
    withCans: (count: number) => (count === 1 ? '1 can full' : `${count} cans full`),
    pour: (kms: string) => `pour at ${kms}`,
    next: (name: string, length: string) => `${name} in ${length}`,
    notKnown: 'not known whether it holds',
    none: 'none',
    nothing: '0',
    passed: (count: number) =>
      `The plan passes by ${count} more ${count === 1 ? 'supply that counts' : 'supplies that count'}.`,
    shortened:
      'Where no telephone stands none is listed, where no hours stand they are not known; the days are below.',
    supplies: 'The supplies on either side of these stretches',
    times: 'Days and times leave out detours, filling and waiting on the way before.',
    rounding:
      'What to arrive with is rounded down, what to fill and to leave with up; places to turn back down.',
  },
  gauge: {
    columns: {
      at: column('at', 'km'),
      place: column('place'),
      on: (commodity: Commodity) => column(`${commodity}: to go on`, 'l'),
      onGauge: column('gauge, cans full'),
      back: column('to go back', 'l'),
      backGauge: column('gauge'),
      planned: column('planned', 'l'),
    },
    bases: {
      plan: 'By the plan. All that can be used, cans and reserve included; what is needed is rounded up, what is planned down.',
      gaps: 'There is no plan: with full tanks at every supply that counts. All that can be used, reserve included; rounded up.',
    },
    eighths: (commodities: string, cans: boolean) =>
      `Gauge of ${commodities}: eighths of what is filled in, also what cannot be drawn${cans ? ', beside so many full cans as the plan has there' : ''}. Between two lines the first holds to go on, the second to go back.`,
    noGauge: (commodities: string) =>
      `${commodities} in several tanks or none: no one gauge shows it, go by the figures.`,
    every: (length: string, printed: string) =>
      `A line every ${length}; the command plan prints one every ${printed}.`,
    mark: (eighths: number) =>
      eighths === 0
        ? 'empty'
        : eighths === 8
          ? 'full'
          : eighths === 4
            ? '1/2'
            : eighths % 2 === 0
              ? `${eighths / 2}/4`
              : `${eighths}/8`,
    beyond: '> full',
    dry: 'dry',
    leftOut:
      'There are too many stops for a line each: what to arrive and to leave with is among the stops, the command plan prints all lines.',
    withCans: (mark: string, cans: number) => (cans === 0 ? mark : `${mark} + ${cans}`),
    noWay: 'no way',
  },
  days: {
    columns: {
      day: column('day'),
      date: column('date'),
      stretch: column('from, to', 'km'),
      drive: column('drive', 'h'),
      night: column('night at'),
    },
    undated: '',
    stretch: (from: string, to: string) => `${from} to ${to}`,
    more: (count: number) => `And ${count} more days.`,
    notAllListed: 'The drive goes on for more days than are listed.',
  },
  whatIfs: {
    all: (count: number) => `Nothing of the ${count} things that were tried takes more than there is.`,
    borne: (count: number) => `${count} more were tried and are borne with the reserve.`,
    safe: 'A plan that is safe against the failure of any one stop exists: see the command plan.',
    notSafe: 'No plan is safe against the failure of any one stop.',
  },
  check: {
    none: 'No supply on the way is used.',
    more: (count: number) => `And ${count} more to check: the command plan and the page name them all.`,
  },
  cautions: {
    more: (count: number) => `And ${count} more: the command plan and the page name them all.`,
    stretch: (from: string, to: string) => `${from} to ${to}: `,
    spot: (place: string) => `${place}: `,
  },
};
