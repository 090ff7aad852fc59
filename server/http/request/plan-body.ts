import { Type } from '@fastify/type-provider-typebox';
import { Paper } from '../../contract/answers/sheet.ts';
import { RigFile } from '../../contract/rig.ts';
import { TripFile } from '../../contract/trip.ts';

/** A kept analysis, by the id that its reply gave; "demo" is the demo. */
export const KeptTrip = Type.Object({ id: Type.String() });

const words = (expected: string) => ({
  additionalProperties: false,
  'x-words': { expected, remedy: 'Send the rig and, if there is one, the trip as JSON' },
});

/** Rig and trip to analyse a kept trip with. */
export const PlanBody = Type.Object(
  { rig: RigFile, trip: Type.Optional(TripFile) },
  words('{ "rig": …, "trip": … }'),
);

/** On which paper a sheet is to be printed, and in which units it is read. */
export const PaperQuery = Type.Object({
  paper: Type.Optional(Paper),
  /** "metric", "us", "imperial", or each unit: "mi,L,kg"; metric where it is left out. */
  units: Type.Optional(Type.String({ maxLength: 60 })),
});

/** A name by which a plan that is being made can be asked for; whoever asks for the plan chooses it. */
export const PlanName = Type.String({
  minLength: 16,
  maxLength: 64,
  pattern: '^[A-Za-z0-9-]+$',
  'x-words': {
    expected: 'a name of 16 to 64 letters, digits and hyphens',
    remedy: 'Choose one at random, and ask with the same name as the plan was asked for with',
  },
});

/** As PlanBody, for a carry plan. */
export const CarryBody = Type.Object(
  {
    rig: RigFile,
    trip: Type.Optional(TripFile),
    extras: Type.Optional(
      Type.Boolean({ default: true, ...words('{ "rig": …, "trip": …, "extras": true or false }') }),
    ),
    name: Type.Optional(PlanName),
  },
  words('{ "rig": …, "trip": …, "extras": true or false, "name": … }'),
);
