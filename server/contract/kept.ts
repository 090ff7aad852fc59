import { type Static, Type } from 'typebox';
import { Bbox, Verdict } from './common.ts';
import { RigFile } from './rig.ts';
import { ExtractReading } from './supplies/readings.ts';
import { TripFile } from './trip.ts';

/** What is kept in the data folder: trips, rigs, extracts. Times are ISO, in UTC. */

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const closed = { additionalProperties: false } as const;
const told = (expected: string, remedy: string) => ({ 'x-words': { expected, remedy } });

/** Pieces of equal length that the small picture of a trip cuts its route into. */
export const PICTURE_PIECES = 32;
/** Changes of a trip that are kept; older ones go. */
export const MOST_CHANGES = 500;
const NAME_CHARACTERS = 120;
const NOTES_CHARACTERS = 100_000;
const CHANGE_CHARACTERS = 300;

const Name = Type.String({
  minLength: 1,
  maxLength: NAME_CHARACTERS,
  pattern: '\\S',
  ...told(`a name of 1 to ${NAME_CHARACTERS} characters`, 'Give it a name'),
});
const Notes = Type.String({
  maxLength: NOTES_CHARACTERS,
  ...told(`at most ${NOTES_CHARACTERS} characters`, 'Shorten the notes'),
});
const Revision = Type.Integer({
  minimum: 1,
  ...told('the revision that the change goes out from', 'Get the trip and take its revision'),
});

/** How one commodity fared when the trip was last analysed as it is kept. */
export const KeptCommodity = Type.Object({
  /** The worst of its gaps: short, unknown, into-reserve, enough. */
  verdict: Verdict,
  /** What is aboard at the middle of each piece of the picture, as a share of the drawable capacity, 0 to 1. */
  shares: Type.Array(Type.Number()),
  /** The verdict of the gap that the middle of each piece lies in. */
  verdicts: Type.Array(Verdict),
});
export type KeptCommodity = Static<typeof KeptCommodity>;

/** What the last analysis of a trip came to, with a small picture of its strip. */
export const KeptResults = Type.Object({
  at: Type.String(),
  lengthKm: Type.Number(),
  fuel: KeptCommodity,
  water: KeptCommodity,
});
export type KeptResults = Static<typeof KeptResults>;

/** An extract that a trip was read with; `id` is null where the extract itself is not kept. */
export const UsedExtract = Type.Object({
  id: nullable(Type.String()),
  /** As answers name it. */
  name: Type.String(),
});
export type UsedExtract = Static<typeof UsedExtract>;

/** A trip as a list shows it. */
export const TripEntry = Type.Object({
  /** Also the id for /api/analyses/{id}. */
  id: Type.String(),
  name: Type.String(),
  createdAt: Type.String(),
  changedAt: Type.String(),
  /** Grows by one with each change. */
  revision: Type.Integer(),
  /** When it was deleted, which can be undone; null for one that is not. */
  deletedAt: nullable(Type.String()),
  route: Type.Object({ fileName: Type.String(), bytes: Type.Integer(), hash: Type.String() }),
  extracts: Type.Array(UsedExtract),
  /** Null where it was not analysed as it is kept now. */
  results: nullable(KeptResults),
  /** Set when the land is invented and must not be driven by. */
  notice: nullable(Type.String()),
  /** The demo, which can be set back to its first state. */
  isDemo: Type.Boolean(),
  /** In a list, of the demo alone: whether it differs from its first state. */
  isChanged: Type.Optional(Type.Boolean()),
});
export type TripEntry = Static<typeof TripEntry>;

/** A trip whole. */
export const KeptTripReply = Type.Object({
  ...TripEntry.properties,
  rig: RigFile,
  trip: TripFile,
  notes: Type.String(),
  /** The change that rig and trip are the state after (`seq` of GET /api/trips/{id}/changes). */
  standsAt: Type.Integer(),
});
export type KeptTripReply = Static<typeof KeptTripReply>;

/**
 * Whether what is kept is kept for good. `memory`: until the server stops, `why` says why; `folder`: in that data folder;
 * `database`: in one that several servers may share. Of the latter two `why` says what cannot be read.
 */
export const StoreState = Type.Object({
  keeps: Type.Union([Type.Literal('folder'), Type.Literal('database'), Type.Literal('memory')]),
  folder: nullable(Type.String()),
  why: nullable(Type.String()),
});
export type StoreState = Static<typeof StoreState>;

/** GET /api/trips: those last changed first. */
export const TripList = Type.Object({
  trips: Type.Array(TripEntry),
  store: StoreState,
  /** Whether the server asks who it is: whoever has signed in can sign out. */
  isShared: Type.Boolean(),
});
export type TripList = Static<typeof TripList>;

/** Body of PUT /api/trips/{id}: rig and trip as they are now, and the change in words. */
export const TripChange = Type.Object(
  {
    revision: Revision,
    rig: RigFile,
    trip: TripFile,
    change: Type.String({
      minLength: 1,
      maxLength: CHANGE_CHARACTERS,
      ...told(`the change in 1 to ${CHANGE_CHARACTERS} characters`, 'Say what was changed'),
    }),
  },
  {
    ...closed,
    examples: [
      {
        revision: 4,
        rig: {
          fuel: { kind: 'diesel', litresPer100Km: 15, tanks: [{ name: 'main', litres: 130 }] },
          water: { litresPerDay: 14, tanks: [{ name: 'under floor', litres: 70 }] },
          pace: { hoursPerDay: 7, kmPerHour: 45 },
        },
        trip: { corridorKm: 5 },
        change: 'Tank "main" holds 130 l',
      },
    ],
  },
);
export type TripChange = Static<typeof TripChange>;

/** Body of PATCH /api/trips/{id}: what of name and notes is to be another. */
export const TripNaming = Type.Object(
  { revision: Revision, name: Type.Optional(Name), notes: Type.Optional(Notes) },
  { ...closed, examples: [{ revision: 4, name: 'Across in May' }] },
);
export type TripNaming = Static<typeof TripNaming>;

/** Body of POST /api/trips/{id}/stand: goes to the state after a change, for undo and redo. No change is added. */
export const TripStand = Type.Object(
  { revision: Revision, seq: Type.Integer({ minimum: 0 }) },
  { ...closed, examples: [{ revision: 4, seq: 0 }] },
);
export type TripStand = Static<typeof TripStand>;

/** Body of POST /api/trips/{id}/extracts: adds a kept extract to a trip. */
export const TripExtract = Type.Object(
  { revision: Revision, extract: Type.String({ minLength: 1, maxLength: 100 }) },
  { ...closed, examples: [{ revision: 4, extract: '6f1c2b1e-5f4e-4d55-9d0c-3b1f6a0e2a11' }] },
);
export type TripExtract = Static<typeof TripExtract>;

/** Body of POST /api/trips/{id}/extracts/remove: takes an extract off a trip, by the name that answers give it. */
export const TripExtractName = Type.Object(
  { revision: Revision, name: Type.String({ minLength: 1, maxLength: 300 }) },
  { ...closed, examples: [{ revision: 4, name: 'Namibia' }] },
);
export type TripExtractName = Static<typeof TripExtractName>;

/** Body of POST /api/trips/{id}/duplicate; without a name it is the old one's with a number. */
export const TripCopy = Type.Object(
  { name: Type.Optional(Name) },
  { ...closed, examples: [{ name: 'Across in May, with the small tank' }] },
);
export type TripCopy = Static<typeof TripCopy>;

/** One change of rig and trip. */
export const TripChangeEntry = Type.Object({
  /** From 0, the state that the trip began with. */
  seq: Type.Integer(),
  /** The change that it was made after: undo goes there. Null for the first one, or where that is not kept any more. */
  after: nullable(Type.Integer()),
  at: Type.String(),
  /** In words. */
  change: Type.String(),
  /** Both as they are after it. */
  rig: RigFile,
  trip: TripFile,
});
export type TripChangeEntry = Static<typeof TripChangeEntry>;

/** GET /api/trips/{id}/changes: the newest first. Redo goes to the newest whose `after` is where the trip stands. */
export const TripChanges = Type.Object({
  standsAt: Type.Integer(),
  changes: Type.Array(TripChangeEntry),
});
export type TripChanges = Static<typeof TripChanges>;

/** A rig that is kept to be used on other trips, by its name. */
export const KeptRig = Type.Object({ name: Type.String(), changedAt: Type.String(), rig: RigFile });
export type KeptRig = Static<typeof KeptRig>;
export const RigList = Type.Object({ rigs: Type.Array(KeptRig) });
export type RigList = Static<typeof RigList>;

/** An extract that is kept for any number of routes. */
export const KeptExtract = Type.Object({
  id: Type.String(),
  /** Unlike all others; answers and --supply name it so. */
  name: Type.String(),
  fileName: Type.String(),
  /** SHA-256 of the file, hexadecimal. */
  hash: Type.String(),
  bytes: Type.Integer(),
  addedAt: Type.String(),
  format: Type.String(),
  /** ISO time for which its content holds; null when the file does not tell. */
  asOf: nullable(Type.String()),
  attribution: nullable(Type.String()),
  licence: nullable(Type.String()),
  /** Box of its declared bounds, else of its objects; null when it holds nothing with a place. */
  bbox: nullable(Bbox),
  /** Its outline as closed rings of [lon, lat]: declared bounds, else the hull of its objects. */
  outline: Type.Array(Type.Array(Type.Array(Type.Number()))),
  /** The commodities that it shows, and whether it is a general map (with roads and places). */
  shows: Type.Object({ fuel: Type.Boolean(), water: Type.Boolean(), general: Type.Boolean() }),
  counts: Type.Object({
    nodes: Type.Integer(),
    ways: Type.Integer(),
    relations: Type.Integer(),
    /** Objects that may supply fuel or water. */
    supplies: Type.Integer(),
    /** Roads, places and coasts that are kept for the map. */
    ground: Type.Integer(),
  }),
});
export type KeptExtract = Static<typeof KeptExtract>;

/** GET /api/extracts: those that are whole, by name, and those being read. */
export const ExtractList = Type.Object({
  extracts: Type.Array(KeptExtract),
  reading: Type.Array(ExtractReading),
  store: StoreState,
});
export type ExtractList = Static<typeof ExtractList>;

/** GET /api/trips/{id}/extracts: what each kept extract has for the route of a trip. */
export const ExtractsForTrip = Type.Object({
  extracts: Type.Array(
    Type.Object({
      id: Type.String(),
      name: Type.String(),
      asOf: nullable(Type.String()),
      /** The trip was read with it. */
      isUsed: Type.Boolean(),
      /** How far off the route its box lies, 0 where they touch; null for one that holds nothing with a place. */
      offRouteKm: nullable(Type.Number()),
      /** Its supplies within the trip's corridor, and some that are little farther. */
      supplies: Type.Integer(),
    }),
  ),
});
export type ExtractsForTrip = Static<typeof ExtractsForTrip>;
