import { type Static, Type } from 'typebox';
import { Parts, Reason, Term } from './common.ts';

const closed = { additionalProperties: false } as const;
const optional = <T extends Parameters<typeof Type.Optional>[0]>(schema: T) => Type.Optional(schema);
const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const name = Type.String({ minLength: 1, maxLength: 80 });

/** Litres a day of one use: one number is the typical value. */
const litresOfUse = (maximum: number) => {
  const litres = Type.Number({ minimum: 0, maximum });
  return Type.Union([litres, Type.Object({ low: litres, typical: litres, high: litres }, closed)]);
};

/** A day's litres of one person, named. Their figures and sources stand in core's table of levels. */
export const UseLevel = Type.Union([
  Type.Literal('emergency'),
  Type.Literal('basic'),
  Type.Literal('careful'),
  Type.Literal('plenty'),
]);
export type UseLevel = Static<typeof UseLevel>;

/** One person, or several alike. Uses left out come from the level; litres a day, in mild weather and at rest. */
export const Person = Type.Object(
  {
    name: optional(name),
    count: optional(Type.Integer({ minimum: 1, maximum: 60 })),
    level: optional(UseLevel),
    drinking: optional(litresOfUse(30)),
    cooking: optional(litresOfUse(50)),
    washingUp: optional(litresOfUse(50)),
    /** Of it the first litre is for teeth, hands before food and wounds: drinking grade. */
    washing: optional(litresOfUse(100)),
    shower: optional(litresOfUse(200)),
  },
  closed,
);
export type Person = Static<typeof Person>;

export const Pet = Type.Object(
  {
    name: optional(name),
    kind: Type.Union([Type.Literal('dog'), Type.Literal('cat'), Type.Literal('other')]),
    kg: Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
    /** As observed; else by body mass. */
    litresPerDay: optional(litresOfUse(100)),
  },
  closed,
);
export type Pet = Static<typeof Pet>;

export const Sun = Type.Union([Type.Literal('shade'), Type.Literal('some'), Type.Literal('full')]);
export type Sun = Static<typeof Sun>;
export const Work = Type.Union([Type.Literal('easy'), Type.Literal('moderate'), Type.Literal('hard')]);
export type Work = Static<typeof Work>;

/** The heat expected by day, and the work done in it. Either `wbgtC`, or temperature with humidity. */
export const Heat = Type.Object(
  {
    /** Wet-bulb globe temperature as measured or forecast, °C. */
    wbgtC: optional(Type.Number({ minimum: -10, maximum: 45 })),
    /** Of the air, in shade, °C. */
    temperatureC: optional(Type.Number({ minimum: -20, maximum: 58 })),
    humidityPercent: optional(Type.Number({ minimum: 0, maximum: 100 })),
    sun: optional(Sun),
    /** Where people are, with temperature and humidity. */
    windKmPerHour: optional(Type.Number({ minimum: 0, maximum: 150 })),
    workHoursPerDay: optional(Type.Number({ minimum: 0, maximum: 24 })),
    work: optional(Work),
  },
  closed,
);
export type Heat = Static<typeof Heat>;

/** Who drinks from the tanks, how much, in what heat. */
export const Crew = Type.Object(
  {
    people: Type.Array(Person, { minItems: 1, maxItems: 60 }),
    pets: optional(Type.Array(Pet, { maxItems: 60 })),
    /** What all aboard used as you observed it, litres a day: it wins over the sum of the parts. */
    observedLitresPerDay: optional(
      Type.Union([
        Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
        Type.Object(
          {
            low: Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
            typical: Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
            high: Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
          },
          closed,
        ),
      ]),
    ),
    heat: optional(Heat),
    /** For the vehicle: radiator, screen. */
    vehicleLitresPerDay: optional(Type.Number({ minimum: 0, maximum: 100 })),
    /** Of what is drawn: spilled, leaked, left in hoses. */
    lossPercent: optional(Type.Number({ minimum: 0, maximum: 50 })),
    /** Camps are near water that you marked safe for skin: washing water is taken there, none is carried. */
    washingAtSource: optional(Type.Boolean()),
  },
  closed,
);
export type Crew = Static<typeof Crew>;

/** For which use a container is kept; `any` where nothing is said. */
export const ContainerGrade = Type.Union([
  Type.Literal('any'),
  Type.Literal('drinking'),
  Type.Literal('washing'),
]);
export type ContainerGrade = Static<typeof ContainerGrade>;

/** What a water container of the rig may say of its use. */
export const CONTAINER_GRADE = { grade: optional(ContainerGrade) };
export const TANK_GRADE = {
  ...CONTAINER_GRADE,
  /** No pipe, pump or tap joins it to another tank: a leak or an open tap elsewhere leaves it full. */
  apart: optional(Type.Boolean()),
};

/** What a trip file may say of help and of water for washing. */
export const WATER_TRIP_DETAIL = {
  /** Hours until somebody raises the alarm, and from then until help is there. */
  alarmHours: optional(Type.Number({ minimum: 0, maximum: 1000 })),
  helpHours: optional(Type.Number({ minimum: 0, maximum: 1000 })),
  /** Ids of waters that you marked safe for skin: they fill what is kept for washing, nothing else. */
  washingSources: optional(Type.Array(Type.String({ minLength: 1, maxLength: 120 }), { maxItems: 1000 })),
};

const Bounds = Type.Object({ low: Type.Number(), typical: Type.Number(), high: Type.Number() });
const GapVerdict = Type.Union([
  Type.Literal('enough'),
  Type.Literal('into-reserve'),
  Type.Literal('short'),
  Type.Literal('unknown'),
]);

export const WaterGrade = Type.Union([Type.Literal('drinking'), Type.Literal('washing')]);
export type WaterGrade = Static<typeof WaterGrade>;

/** One grade's figures over a gap, as those of the gap itself. */
export const GradeFigures = Type.Object({
  needL: Type.Number(),
  reserveL: Type.Number(),
  arriveL: Type.Number(),
  marginL: Type.Number(),
  verdict: GapVerdict,
});
export type GradeFigures = Static<typeof GradeFigures>;

/**
 * The two grades over a gap: needs, reserves, levels on arrival and margins of both add up to the gap's own, but for
 * washing water taken at the trip's washing sources, which the gap's own figures leave out.
 */
export const GapGrades = Type.Object({
  drinking: GradeFigures,
  washing: GradeFigures,
  /** Taken on the way at the trip's washing sources. */
  washingTakenL: Type.Number(),
});
export type GapGrades = Static<typeof GapGrades>;

export const WaterUseName = Type.Union([
  Type.Literal('drinking'),
  Type.Literal('cooking'),
  Type.Literal('washing-up'),
  Type.Literal('teeth-and-hands'),
  Type.Literal('pets'),
  Type.Literal('washing'),
  Type.Literal('shower'),
  Type.Literal('vehicle'),
  Type.Literal('losses'),
  Type.Literal('osmosis-waste'),
]);
export type WaterUseName = Static<typeof WaterUseName>;

export const GradeUse = Type.Object({
  litresPerDay: Bounds,
  /** Aboard at the start that can serve it. */
  aboardL: Type.Number(),
  /**
   * Until it ends with both grades used as reckoned, from what is aboard at the start, no supply on the way; null where
   * it is not used.
   */
  enduranceDays: nullable(Bounds),
});
export type GradeUse = Static<typeof GradeUse>;

/** Water use in full: what the litres were reckoned with, and how long they last. */
export const WaterUse = Type.Object({
  /** `rate`: the rig's own litres a day; `crew`: summed from people and pets; `observed`: your figure, split by the crew. */
  from: Type.Union([Type.Literal('rate'), Type.Literal('crew'), Type.Literal('observed')]),
  litresPerDay: Bounds,
  /** By use and grade, all people together; they add up to `litresPerDay`. Empty where no crew is told. */
  uses: Type.Array(
    Type.Object({
      use: WaterUseName,
      grade: WaterGrade,
      litresPerDay: Bounds,
      source: Type.String(),
      sourceParts: optional(Parts),
    }),
  ),
  /** Washing water that is taken at the source and not carried; not in `uses`. */
  notCarriedLitresPerDay: Bounds,
  /** Null where no crew is told: then all water is taken for drinking grade. */
  grades: nullable(Type.Object({ drinking: GradeUse, washing: GradeUse })),
  aboardL: Type.Number(),
  enduranceDays: Bounds,
  heat: nullable(
    Type.Object({
      wbgtC: Type.Number(),
      from: Type.Union([Type.Literal('told'), Type.Literal('estimate')]),
      /** Of the table: 0 below it, 1 to 5. */
      category: Type.Integer(),
      sun: Sun,
      /** Null where WBGT was told. */
      windKmPerHour: nullable(Type.Number()),
      work: Work,
      workHoursPerDay: Type.Number(),
      /** For each person: multiple of the drinking water of mild weather, and litres added by each hour of work. */
      restFactor: Type.Number(),
      litresPerWorkHour: Bounds,
      /** Minutes of work and of rest in an hour; null where the table sets no limit. */
      workRest: nullable(Type.Object({ workMinutes: Type.Number(), restMinutes: Type.Number() })),
      /** How the figures were come by, and for which range they hold. */
      why: Type.String(),
      whyParts: optional(Parts),
    }),
  ),
  /** Stretches of which the heat was told: litres a day there at the rate the verdict uses, and how many more than elsewhere. */
  inHeat: Type.Array(
    Type.Object({
      fromKm: Type.Number(),
      toKm: Type.Number(),
      litresPerDay: Type.Number(),
      addedPerDay: Type.Number(),
    }),
  ),
  reserve: Type.Object({
    /** Litres that every gap must leave, before any share of its need. */
    litres: Type.Number(),
    /** Days of drinking grade that these are. */
    days: Type.Number(),
    /** Until the alarm and until help; null where neither was told. */
    hoursToHelp: nullable(Type.Number()),
    /** With all full: what is left of drinking grade when the worst single leak, pump or tap empties what it can. */
    safeL: Type.Number(),
    worstLoss: Type.String(),
    holds: Type.Boolean(),
  }),
  /** Where treatment happens; null without a treatment line. */
  treatAt: nullable(Type.Union([Type.Literal('filling'), Type.Literal('tap')])),
  /** What the water of the containers and pipes is fit for after each fill along the route that changes it. */
  mixing: Type.Array(
    Type.Object({
      atKm: Type.Number(),
      id: Type.String(),
      container: Type.String(),
      pipes: Type.String(),
      text: Type.String(),
    }),
  ),
  treatText: Type.String(),
  cautions: Type.Array(Reason),
  /** What the litres a day were summed from, at the rate the verdict uses. */
  working: Type.Array(Term),
});
export type WaterUse = Static<typeof WaterUse>;
