import { type Static, Type } from 'typebox';
import { Caution, Commodity, Evidence, IsoDate, Parts, SAID_BY, Verdict } from './common.ts';
import { Arrival } from './pace.ts';

const closed = { additionalProperties: false } as const;
const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const cans = Type.Integer({ minimum: 0, maximum: 200 });

const litresToHave = Type.Number({ exclusiveMinimum: 0, maximum: 10_000 });

const price = Type.Number({ minimum: 0, maximum: 1_000_000 });
const pricePerLitre = Type.Object({ fuel: Type.Optional(price), water: Type.Optional(price) }, closed);

/** What a supply gives and how long it keeps one waiting, wherever the route comes by it. */
export const PlanStopAsk = Type.Object(
  {
    id: Type.String({ minLength: 1 }),
    /** No more than this is to be had at one halt. */
    mostLitres: Type.Optional(
      Type.Object({ fuel: Type.Optional(litresToHave), water: Type.Optional(litresToHave) }, closed),
    ),
    /** Before anything is filled: a queue, a shut gate. Beyond whole days it goes off the hours of driving. */
    waitHours: Type.Optional(Type.Number({ minimum: 0, maximum: 720 })),
    /** In place of the price for all stops. */
    pricePerLitre: Type.Optional(pricePerLitre),
    /** The day on which that was said, and by whom. */
    on: Type.Optional(IsoDate),
    ...SAID_BY,
  },
  closed,
);
export type PlanStopAsk = Static<typeof PlanStopAsk>;

/** What a trip file may ask of the carry plan. */
export const PLAN_DETAIL = {
  plan: Type.Optional(
    Type.Object(
      {
        /**
         * No more cans than this. Left out: those that are owned, and where no plan can be made of them the fewest that one
         * can be made of.
         */
        mostCans: Type.Optional(
          Type.Object({ fuel: Type.Optional(cans), water: Type.Optional(cans) }, closed),
        ),
        /** Whether cans can be filled before the start; left out, where the tanks are full there. */
        fillAtStart: Type.Optional(
          Type.Object({ fuel: Type.Optional(Type.Boolean()), water: Type.Optional(Type.Boolean()) }, closed),
        ),
        /** No cans in the room that people sit or sleep in. */
        noneInside: Type.Optional(Type.Boolean()),
        /** Supplies that the plan is to pass by. */
        passBy: Type.Optional(Type.Array(Type.String({ minLength: 1 }), { maxItems: 500 })),
        /** Supplies at which the plan is to stop, whatever it needs there. */
        mustStop: Type.Optional(Type.Array(Type.String({ minLength: 1 }), { maxItems: 500 })),
        /** The plan is to stop at every supply that counts with no more than so much to drive off the route, one way. */
        stopWithinKm: Type.Optional(Type.Number({ minimum: 0, maximum: 200 })),
        /** What is known of single stops. */
        stops: Type.Optional(Type.Array(PlanStopAsk, { maxItems: 200 })),
        /** What a litre costs where nothing is told of the stop itself, in the currency that is named. */
        pricePerLitre: Type.Optional(pricePerLitre),
        currency: Type.Optional(Type.String({ minLength: 1, maxLength: 12 })),
        /** When a stop fails, the reserve may be spent to get away from it. */
        spendReserveOnFailure: Type.Optional(Type.Boolean()),
      },
      closed,
    ),
  ),
};

const byCommodity = <T extends Parameters<typeof Type.Object>[0][string]>(schema: T) =>
  Type.Object({ fuel: schema, water: schema });

/** What a plan aims at, the first before the next, with the value reached and whether none better exists. */
export const PlanAim = Type.Object({
  aim: Type.Union([
    Type.Literal('doubtful-km'),
    Type.Literal('implied-km'),
    Type.Literal('stated-km'),
    Type.Literal('cans-to-get'),
    Type.Literal('lost-h'),
    Type.Literal('driving-km'),
    Type.Literal('can-km'),
    Type.Literal('least-margin-km'),
    Type.Literal('short-fill-l'),
  ]),
  value: Type.Number(),
  proven: Type.Boolean(),
  /** By how much it might be better at the most. */
  gap: Type.Number(),
});
export type PlanAim = Static<typeof PlanAim>;

export const PlanEdge = Type.Object({
  kind: Type.Union([Type.Literal('start'), Type.Literal('passing'), Type.Literal('end')]),
  id: nullable(Type.String()),
  name: nullable(Type.String()),
  atKm: Type.Number(),
  detourKm: Type.Number(),
  evidence: nullable(Evidence),
});
export type PlanEdge = Static<typeof PlanEdge>;

/** From one supply that is used to the next, litres at the rate the verdict uses. */
export const PlanLeg = Type.Object({
  from: PlanEdge,
  to: PlanEdge,
  /** Full on leaving `from`. */
  cans: Type.Integer(),
  /** In the fixed tanks on leaving, and by how much that is short of full for the sake of a permitted mass. */
  tankL: Type.Number(),
  shortL: Type.Number(),
  /** With cans. */
  departL: Type.Number(),
  needL: Type.Number(),
  reserveL: Type.Number(),
  arriveL: Type.Number(),
  /** Of drinking grade, where that is less. */
  marginL: Type.Number(),
  verdict: Verdict,
  acrossNoData: Type.Boolean(),
  weakest: nullable(Evidence),
  turnBackKm: nullable(Type.Number()),
});
export type PlanLeg = Static<typeof PlanLeg>;

/** Cans that are carried full from one place until they are poured. */
export const PlanCarry = Type.Object({
  commodity: Commodity,
  cans: Type.Integer(),
  litres: Type.Number(),
  /** Filled at. */
  from: PlanEdge,
  /** The next supply of that commodity that is used. */
  to: PlanEdge,
  fromKm: Type.Number(),
  /** Where the last is poured; `to` where one is still full on arrival. */
  toKm: Type.Number(),
  /** First can to last; those still full on arrival are not among them. */
  pourAtKm: Type.Array(Type.Number()),
});
export type PlanCarry = Static<typeof PlanCarry>;

/** Levels at a place; two at one place are a fill, a pour or a drop. Straight lines between. */
export const PlanLevel = Type.Object({
  atKm: Type.Number(),
  tankL: Type.Number(),
  /** In each fixed tank, in the order of the rig; left out where there are several and the rig does not tell how they empty. */
  tanksL: Type.Optional(Type.Array(Type.Number())),
  cansL: Type.Array(Type.Number()),
  totalL: Type.Number(),
  /** Of water, where a crew tells the grades. */
  drinkableL: Type.Optional(Type.Number()),
  washingL: Type.Optional(Type.Number()),
});
export type PlanLevel = Static<typeof PlanLevel>;

const PlanStopPassing = Type.Object({
  id: Type.String(),
  name: nullable(Type.String()),
  kind: Type.String(),
  commodity: Commodity,
  atKm: Type.Number(),
  detourKm: Type.Number(),
  evidence: Evidence,
  /** Passed by when false. */
  used: Type.Boolean(),
  /**
   * Only where used: aboard on arrival, filled in, and full cans on leaving. Negative where so much is let go for the sake
   * of a permitted mass.
   */
  arriveL: nullable(Type.Number()),
  fillL: nullable(Type.Number()),
  cansFull: nullable(Type.Integer()),
  /** The most that is to be had there, where it was told. */
  mostL: nullable(Type.Number()),
  /** Hours of waiting as told, and of filling and treating where the flow is known; reckoned with where it is used. */
  waitHours: Type.Number(),
  fillHours: Type.Number(),
});

/** Passings within 3 km, taken as one place to halt. */
export const PlanStop = Type.Object({
  fromKm: Type.Number(),
  toKm: Type.Number(),
  used: Type.Boolean(),
  passings: Type.Array(PlanStopPassing),
});
export type PlanStop = Static<typeof PlanStop>;

/** Litres that go into one tank, all tanks or so many cans; negative: let go for the sake of a permitted mass. */
const Filling = Type.Object({
  into: Type.Union([Type.Literal('tank'), Type.Literal('tanks'), Type.Literal('cans')]),
  /** Of the tank, where it is one. */
  name: nullable(Type.String()),
  /** Cans that are filled; 1 for a tank. */
  count: Type.Integer(),
  litres: Type.Number(),
});

/** What is done about one commodity at a halt. */
export const HaltSupply = Type.Object({
  at: PlanEdge,
  /** Null at the start and at the end, as are the coordinates. */
  kind: nullable(Type.String()),
  lon: nullable(Type.Number()),
  lat: nullable(Type.Number()),
  /** Null at the start. */
  arriveL: nullable(Type.Number()),
  /** At the start what is filled before leaving. */
  fillL: Type.Number(),
  into: Type.Array(Filling),
  /** The most that is to be had, where it was told. */
  mostL: nullable(Type.Number()),
  cansFull: Type.Integer(),
  /** Null at the end. */
  leaveL: nullable(Type.Number()),
  /** Where the cans that are full on leaving are poured; those still full on the next arrival are not among them. */
  pourAtKm: Type.Array(Type.Number()),
  /** The next supply that is used, or the end, and how far along the route; null at the end. */
  next: nullable(Type.Object({ at: PlanEdge, lengthKm: Type.Number() })),
  /** The last place from which one can come back here with the reserve; null where there is none. */
  turnBackKm: nullable(Type.Number()),
  waitHours: Type.Number(),
  fillHours: Type.Number(),
  /** What is filled times its price; null where no price is told. */
  cost: nullable(Type.Number()),
  /** As its tags say, null where they do not; null for start, end and supplies of one's own, where nobody is to be asked. */
  contact: nullable(
    Type.Object({
      phone: nullable(Type.String()),
      website: nullable(Type.String()),
      openingHours: nullable(Type.String()),
    }),
  ),
  /** Its mapped hours against the time of coming there. */
  arrival: nullable(Arrival),
  /**
   * Of water, where the trip tells `helpHours`: the latest moment at which somebody must call for help, so that it comes
   * while there is water. Hours from leaving, negative where the water does not last so long; `by`: reckoned from the
   * earliest that one may leave, null where no date is told.
   */
  alarm: nullable(Type.Object({ afterHours: Type.Number(), by: nullable(Type.String()) })),
});
export type HaltSupply = Static<typeof HaltSupply>;

/**
 * The start, a stop that is used, or the end: one place to halt, for one commodity or both. `time`: days of the drive at
 * the fast and the slow pace, with local times, or dates where no hour of departure is told; detours, filling and waiting
 * left out.
 */
export const SheetHalt = Type.Object({
  kind: Type.Union([Type.Literal('start'), Type.Literal('stop'), Type.Literal('end')]),
  atKm: Type.Number(),
  time: Type.Object({
    firstDay: Type.Integer(),
    lastDay: Type.Integer(),
    span: nullable(Type.Object({ earliest: Type.String(), latest: Type.String() })),
  }),
  fuel: nullable(HaltSupply),
  water: nullable(HaltSupply),
});
export type SheetHalt = Static<typeof SheetHalt>;

/** What a whole plan takes; hours at the slow pace. */
export const PlanTotals = Type.Object({
  filled: byCommodity(
    Type.Object({
      /** Before leaving, and at the stops. */
      startL: Type.Number(),
      stopsL: Type.Number(),
      /** Of both; null where the price of some of it is not told. */
      cost: nullable(Type.Number()),
    }),
  ),
  currency: nullable(Type.String()),
  /** Off the route, there and back. */
  drivingKm: Type.Number(),
  drivingHours: Type.Number(),
  detourHours: Type.Number(),
  waitHours: Type.Number(),
  fillHours: Type.Number(),
  /** From departure to the end of the route, nights, stays and halts included. */
  days: Type.Number(),
});
export type PlanTotals = Static<typeof PlanTotals>;

/** What makes a plan impossible. `together`: each commodity alone can be done, both together cannot. */
export const PlanBreak = Type.Object({
  cause: Type.Union([
    Type.Literal('fuel'),
    Type.Literal('water'),
    Type.Literal('together'),
    Type.Literal('mass'),
  ]),
  from: nullable(PlanEdge),
  to: nullable(PlanEdge),
  /** Litres missing with as many cans as there may be. */
  missingL: nullable(Type.Number()),
  text: Type.String(),
  parts: Type.Optional(Parts),
});
export type PlanBreak = Static<typeof PlanBreak>;

/** A change with which there is a plan: computed again with it, and found. */
export const WayOut = Type.Object({
  kind: Type.Union([
    Type.Literal('fill-first'),
    Type.Literal('more-cans'),
    Type.Literal('less-washing'),
    Type.Literal('longer-days'),
    Type.Literal('depot'),
    Type.Literal('other-stop'),
  ]),
  /** First a telephone call: it hangs on a point that does not count. Never a plan as it stands. */
  telephoneFirst: Type.Boolean(),
  text: Type.String(),
  parts: Type.Optional(Parts),
  cans: byCommodity(Type.Integer()),
  /** Of the change: litres filled before leaving, cans beyond those there are, litres a day less, hours a day, litres laid, km there and back. */
  amount: Type.Number(),
  unit: Type.Union([
    Type.Literal('cans'),
    Type.Literal('l a day'),
    Type.Literal('hours a day'),
    Type.Literal('l'),
    Type.Literal('km'),
  ]),
  atKm: nullable(Type.Number()),
  id: nullable(Type.String()),
  commodity: nullable(Commodity),
  /** Of the cans it takes, full, beyond those there are. */
  moreKg: Type.Number(),
  /** What is laid beforehand, in route order; `atKm`, `commodity` and `amount` are those of the first. */
  depots: Type.Optional(
    Type.Array(
      Type.Object({
        atKm: Type.Number(),
        commodity: Commodity,
        cans: Type.Integer(),
        litres: Type.Number(),
        /** The latest place that is reached with the reserve; false where it is laid earlier, beside the other commodity's. */
        latest: Type.Boolean(),
      }),
    ),
  ),
  /** Stops off the plan that it goes by, in route order; `id`, `atKm` and `commodity` are those of the first. */
  stops: Type.Optional(
    Type.Array(
      Type.Object({
        id: Type.String(),
        name: nullable(Type.String()),
        kind: Type.String(),
        commodity: Commodity,
        atKm: Type.Number(),
        /** There and back. */
        drivingKm: Type.Number(),
        evidence: Evidence,
        counts: Type.Boolean(),
      }),
    ),
  ),
  /** What is filled before leaving; `commodity` and `amount` are those of the first. */
  fills: Type.Optional(Type.Array(Type.Object({ commodity: Commodity, litres: Type.Number() }))),
  /** Of washing and shower water, what is given up. */
  cutPercent: Type.Optional(Type.Integer()),
});
export type WayOut = Static<typeof WayOut>;

/** A plan that still arrives when any one stop turns out dry or shut. */
export const OneFailure = Type.Object({
  status: Type.Union([Type.Literal('found'), Type.Literal('none'), Type.Literal('out-of-time')]),
  spendsReserve: Type.Boolean(),
  cans: byCommodity(Type.Integer()),
  /** Beyond the plain plan. */
  moreCans: byCommodity(Type.Integer()),
  moreKg: Type.Number(),
  moreDrivingKm: Type.Number(),
  proven: Type.Boolean(),
  /** As of the plan above. */
  sheet: Type.Array(SheetHalt),
  totals: nullable(PlanTotals),
  carries: Type.Array(PlanCarry),
  legs: byCommodity(Type.Array(PlanLeg)),
  /** Waters at which the night has to be spent although filling ends before: legs that begin there are reckoned so. */
  nights: Type.Array(Caution),
  /** Where there is none: the stops whose failing nothing bears, as far as the time was enough to look for them. */
  breaks: Type.Array(Type.Object({ at: PlanEdge, text: Type.String(), parts: Type.Optional(Parts) })),
  /**
   * What is done when a stop fails: to the next one that is used; else to the nearest on the way there that counts, or back
   * to the one before, whichever is nearer.
   */
  failures: Type.Array(
    Type.Object({
      commodity: Commodity,
      at: PlanEdge,
      next: Type.Union([Type.Literal('on'), Type.Literal('back')]),
      to: PlanEdge,
      arriveL: Type.Number(),
    }),
  ),
});
export type OneFailure = Static<typeof OneFailure>;

/** Where to fill, what to carry over which stretch, when to pour. */
export const Plan = Type.Object({
  status: Type.Union([Type.Literal('found'), Type.Literal('none'), Type.Literal('out-of-time')]),
  /** In order: each was minimised with those before it held; before what is filled up where one halts anyway. */
  aims: Type.Array(PlanAim),
  cans: byCommodity(Type.Integer()),
  mostCans: byCommodity(Type.Integer()),
  /** Of the cans of the plan, those beyond what is owned. */
  getCans: byCommodity(Type.Integer()),
  /** The whole plan, halt by halt, in the order of the road. */
  sheet: Type.Array(SheetHalt),
  /** Null where there is none. */
  totals: nullable(PlanTotals),
  stops: Type.Array(PlanStop),
  legs: byCommodity(Type.Array(PlanLeg)),
  carries: Type.Array(PlanCarry),
  levels: byCommodity(Type.Array(PlanLevel)),
  /** Null where the rig tells no vehicle. */
  masses: nullable(
    Type.Array(
      Type.Object({
        atKm: Type.Number(),
        totalKg: Type.Number(),
        frontKg: nullable(Type.Number()),
        rearKg: nullable(Type.Number()),
      }),
    ),
  ),
  /** What the plan rests on that is not known. */
  restsOn: Type.Array(Caution),
  /** Only where there is none. */
  breaks: Type.Array(PlanBreak),
  waysOut: Type.Array(WayOut),
  /** False where the time ran out before all changes were tried. */
  waysOutComplete: Type.Boolean(),
  /** Null where there is no plain plan. */
  oneFailure: nullable(OneFailure),
});
export type Plan = Static<typeof Plan>;
