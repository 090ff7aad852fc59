import { type Static, Type } from 'typebox';
import { TripFile } from '../trip.ts';

const {
  confirmations,
  corrections,
  ownPoints,
  closed,
  heat,
  waterNotes,
  washingSources,
  laid,
  surfaces,
  oneWay,
  plan,
} = TripFile.properties;

/** All that a traveller noted of supplies and of the road, as a trip has it: what goes from one trip into another. */
export const FieldNotes = Type.Object(
  {
    confirmations,
    corrections,
    ownPoints,
    closed,
    heat,
    waterNotes,
    washingSources,
    laid,
    surfaces,
    oneWay,
    /** Litres, waiting and prices of single stops. */
    stops: plan.properties.stops,
  },
  { additionalProperties: false },
);
export type FieldNotes = Static<typeof FieldNotes>;

/** Files in which notes travel. */
export const NotesFormat = Type.Union([Type.Literal('gpx'), Type.Literal('geojson'), Type.Literal('csv')]);
export type NotesFormat = Static<typeof NotesFormat>;
