import type { Commodity, Evidence } from '../../contract/common.ts';
import type { ClosedStretch, HeatStretch } from '../../contract/notes.ts';
import type { LaidSupply, TripFile } from '../../contract/trip.ts';
import {
  ALLOWANCE_PERCENT,
  CAMP_DAYS,
  CORRIDOR_KM,
  COUNTING,
  DETOUR_FACTOR,
  PART,
  SPARSE_STEP_KM,
} from '../defaults/trip-defaults.ts';
import type { Phrase } from '../phrases/phrases.ts';
import { type Assumption, OURS } from '../quantity/assumption.ts';
import { metresOf } from '../quantity/rates.ts';
import type { SpanM } from '../quantity/span.ts';
import type { SurfaceStretch } from '../surface/surface.ts';

/** A trip with every default filled in; `aboard` and `onward` stay open where the user did not answer. */
export interface Trip {
  aboard: NonNullable<TripFile['aboard']>;
  /** Past the end of the route to the next supply. */
  onward: { m: number; hours: number } | null;
  corridorM: number;
  counting: { fuel: Evidence; water: Evidence };
  allowancePercent: number;
  detourFactor: number;
  part: 'all' | number | string;
  departure: string | null;
  /** Straight steps longer than this are taken for a sketch; Infinity where the user vouches for them. */
  sparseStepM: number;
  campDays: number;
  /** Local hour at which each day's driving begins; null when not told. */
  departureHour: number | null;
  campAfterHours: number | null;
  camps: readonly { atM: number; name: string | null }[];
  stays: readonly { atM: number; days: number; name: string | null }[];
  /** Supplies of the user's own. */
  laid: readonly LaidAt[];
  oneWay: readonly SpanM[];
  confirmations: NonNullable<TripFile['confirmations']>;
  corrections: NonNullable<TripFile['corrections']>;
  /** Points of the user's own, at their places. */
  ownPoints: NonNullable<TripFile['ownPoints']>;
  /** Stretches on which nobody may drive. */
  closed: readonly (SpanM & Pick<ClosedStretch, 'from' | 'until' | 'on' | 'by' | 'phone' | 'words'>)[];
  /** Stretches of which the user tells the heat. */
  heat: readonly (SpanM & Omit<HeatStretch, 'fromKm' | 'toKm'>)[];
  waterNotes: NonNullable<TripFile['waterNotes']>;
  /** What the user vouches for of single extracts. */
  extracts: NonNullable<TripFile['extracts']>;
  surfaces: readonly SurfaceStretch[];
  /** Hours until the alarm, and from then until help; null when not told. */
  alarmHours: number | null;
  helpHours: number | null;
  /** Ids of waters that the user marked safe for skin. */
  washingSources: readonly string[];
  /** °C; null when not told. */
  coldestNightC: number | null;
}

/** A supply of the user's own at its place, metres along and off the route. */
export interface LaidAt extends Pick<LaidSupply, 'commodity' | 'litres'> {
  readonly name: string | null;
  readonly atM: number;
  readonly detourM: number;
  readonly by: NonNullable<LaidSupply['by']>;
  /** The first day on which it is there; null: before the trip begins. */
  readonly from: string | null;
}

/** A trip ready to be reckoned with, the file with every default written into it, and which defaults those were. */
export interface SettledTrip {
  readonly trip: Trip;
  readonly settled: TripFile;
  readonly assumptions: readonly Assumption[];
}

/** Fills in what the trip file leaves out; the file is taken as checked (check-trip). */
export function settleTrip(file: TripFile): SettledTrip {
  const assumptions: Assumption[] = [];
  const counting = {
    fuel: settleCounting(file, 'fuel', assumptions),
    water: settleCounting(file, 'water', assumptions),
  };
  const figures = settleFigures(file, assumptions);
  const part = file.part ?? PART;
  if (file.departureHour === undefined) {
    assumptions.push({
      path: '/departureHour',
      value: { phrase: 'with-a-driving-day', facts: {} },
      why: OURS,
    });
  }
  return {
    trip: {
      ...inMetres(file, figures),
      allowancePercent: figures.allowancePercent,
      detourFactor: figures.detourFactor,
      campDays: figures.campDays,
      counting,
      part,
      aboard: file.aboard ?? {},
      departure: file.departure ?? null,
      departureHour: file.departureHour ?? null,
      campAfterHours: file.campAfterHours ?? null,
      confirmations: file.confirmations ?? [],
      corrections: file.corrections ?? [],
      ownPoints: file.ownPoints ?? [],
      waterNotes: file.waterNotes ?? [],
      extracts: file.extracts ?? [],
      alarmHours: file.alarmHours ?? null,
      helpHours: file.helpHours ?? null,
      washingSources: file.washingSources ?? [],
      coldestNightC: file.coldestNightC ?? null,
    },
    settled: { ...file, ...figures, counting, part },
    assumptions,
  };
}

type InMetres = Pick<
  Trip,
  | 'corridorM'
  | 'sparseStepM'
  | 'onward'
  | 'camps'
  | 'stays'
  | 'laid'
  | 'oneWay'
  | 'closed'
  | 'heat'
  | 'surfaces'
>;

/** The places and distances of a trip; the one place where they come out of the kilometres of a file. */
function inMetres(file: TripFile, { corridorKm, sparseStepKm }: Figures): InMetres {
  const { onward, camps = [], stays = [], laid = [], oneWay = [], closed = [], surfaces = [] } = file;
  const { heat = [] } = file;
  const span = ({ fromKm, toKm }: { fromKm: number; toKm: number }): SpanM => ({
    fromM: metresOf(fromKm),
    toM: metresOf(toKm),
  });
  return {
    corridorM: metresOf(corridorKm),
    sparseStepM: file.routeIsRoad === true ? Infinity : metresOf(sparseStepKm),
    onward: onward === undefined ? null : { m: metresOf(onward.km), hours: onward.hours ?? 0 },
    camps: camps.map(({ atKm, name = null }) => ({ atM: metresOf(atKm), name })),
    stays: stays.map(({ atKm, days, name = null }) => ({ atM: metresOf(atKm), days, name })),
    laid: laid.map(laidAt),
    oneWay: oneWay.map(span),
    closed: closed.map(({ fromKm, toKm, ...rest }) => ({ ...span({ fromKm, toKm }), ...rest })),
    heat: heat.map(({ fromKm, toKm, ...rest }) => ({ ...span({ fromKm, toKm }), ...rest })),
    surfaces: surfaces.map(({ fromKm, toKm, ...rest }) => ({ ...span({ fromKm, toKm }), ...rest })),
  };
}

const laidAt = ({ name, atKm, detourKm = 0, by = 'depot', from, commodity, litres }: LaidSupply): LaidAt => ({
  commodity,
  litres,
  name: name ?? null,
  atM: metresOf(atKm),
  detourM: metresOf(detourKm),
  by,
  from: from ?? null,
});

function settleCounting(file: TripFile, commodity: Commodity, assumptions: Assumption[]): Evidence {
  const own = file.counting?.[commodity];
  if (own !== undefined) return own;
  const word = COUNTING[commodity];
  const value: Phrase = { phrase: 'word', facts: { word } };
  assumptions.push({ path: `/counting/${commodity}`, value, why: OURS });
  return word;
}

type Figures = Required<
  Pick<TripFile, 'corridorKm' | 'allowancePercent' | 'detourFactor' | 'sparseStepKm' | 'campDays'>
>;

function settleFigures(file: TripFile, assumptions: Assumption[]): Figures {
  const settle = (key: keyof Figures, standard: number, value: Phrase, why: Phrase = OURS): number => {
    const own = file[key];
    if (own !== undefined) return own;
    assumptions.push({ path: `/${key}`, value, why });
    return standard;
  };
  const km = (value: number): Phrase => ({ phrase: 'kilometres', facts: { m: metresOf(value) } });
  const percent: Phrase = { phrase: 'percent', facts: { percent: ALLOWANCE_PERCENT } };
  const factor: Phrase = { phrase: 'straight-line-times', facts: { factor: DETOUR_FACTOR } };
  const days: Phrase = { phrase: 'days-a-camp', facts: { days: CAMP_DAYS } };
  return {
    corridorKm: settle('corridorKm', CORRIDOR_KM, km(CORRIDOR_KM)),
    allowancePercent: settle('allowancePercent', ALLOWANCE_PERCENT, percent, {
      phrase: 'surface-unknown',
      facts: {},
    }),
    detourFactor: settle('detourFactor', DETOUR_FACTOR, factor),
    sparseStepKm: settle('sparseStepKm', SPARSE_STEP_KM, km(SPARSE_STEP_KM)),
    campDays: settle('campDays', CAMP_DAYS, days),
  };
}
