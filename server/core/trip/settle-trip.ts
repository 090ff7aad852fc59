import type { Evidence } from '../../contract/common.ts';
import type { TripFile } from '../../contract/trip.ts';
import type { Assumption } from '../quantity/assumption.ts';

/** A trip with every default filled in; `aboard` and `onward` stay open where the user did not answer. */
export interface Trip {
  aboard: NonNullable<TripFile['aboard']>;
  onward: { km: number; hours: number } | null;
  corridorKm: number;
  counting: { fuel: Evidence; water: Evidence };
  allowancePercent: number;
  detourFactor: number;
  part: 'all' | number | string;
  departure: string | null;
  sparseStepKm: number;
  campDays: number;
  /** Local hour at which each day's driving begins; null when not told. */
  departureHour: number | null;
  campAfterHours: number | null;
  camps: { atKm: number; name: string | null }[];
  stays: NonNullable<TripFile['stays']>;
  oneWay: NonNullable<TripFile['oneWay']>;
  confirmations: NonNullable<TripFile['confirmations']>;
  waterNotes: NonNullable<TripFile['waterNotes']>;
  surfaces: NonNullable<TripFile['surfaces']>;
  /** Hours until the alarm, and from then until help; null when not told. */
  alarmHours: number | null;
  helpHours: number | null;
  /** Ids of waters that the user marked safe for skin. */
  washingSources: readonly string[];
  /** °C; null when not told. */
  coldestNightC: number | null;
}

/** Each default with where it comes from. */
const DEFAULTS = {
  corridorKm: { value: 5, unit: ' km', why: 'ours' },
  allowancePercent: { value: 5, unit: ' %', why: 'surface unknown (ours)' },
  detourFactor: { value: 1.3, unit: ' × the straight line', why: 'ours' },
  // The longest step of the real road track that we hold is 4.8 km, routes of via points have steps of tens of kilometres.
  sparseStepKm: { value: 5, unit: ' km', why: 'ours' },
  campDays: { value: 1, unit: ' day a camp', why: 'ours' },
} as const;

/** Fuel: a station's kind suffices. Water: its tags must say so (ours). */
const COUNTING = { fuel: 'implied', water: 'stated' } as const;

/** Fills in what the trip file leaves out; the file is taken as checked (check-trip). */
export function settleTrip(file: TripFile): { trip: Trip; settled: TripFile; assumptions: Assumption[] } {
  const assumptions: Assumption[] = [];
  const settle = (key: keyof typeof DEFAULTS): number => {
    const given = file[key];
    if (given !== undefined) return given;
    const { value, unit, why } = DEFAULTS[key];
    assumptions.push({ path: `/${key}`, value: `${value}${unit}`, why });
    return value;
  };
  const counting = {
    fuel: file.counting?.fuel ?? COUNTING.fuel,
    water: file.counting?.water ?? COUNTING.water,
  };
  if (file.counting?.fuel === undefined) {
    assumptions.push({ path: '/counting/fuel', value: COUNTING.fuel, why: 'ours' });
  }
  if (file.counting?.water === undefined) {
    assumptions.push({ path: '/counting/water', value: COUNTING.water, why: 'ours' });
  }
  const figures = {
    corridorKm: settle('corridorKm'),
    allowancePercent: settle('allowancePercent'),
    detourFactor: settle('detourFactor'),
    sparseStepKm: settle('sparseStepKm'),
    campDays: settle('campDays'),
  };
  const part = file.part ?? 'all';
  return {
    trip: {
      ...figures,
      counting,
      part,
      aboard: file.aboard ?? {},
      onward: file.onward === undefined ? null : { km: file.onward.km, hours: file.onward.hours ?? 0 },
      departure: file.departure ?? null,
      departureHour: file.departureHour ?? null,
      campAfterHours: file.campAfterHours ?? null,
      camps: (file.camps ?? []).map(({ atKm, name }) => ({ atKm, name: name ?? null })),
      stays: file.stays ?? [],
      oneWay: file.oneWay ?? [],
      confirmations: file.confirmations ?? [],
      waterNotes: file.waterNotes ?? [],
      surfaces: file.surfaces ?? [],
      alarmHours: file.alarmHours ?? null,
      helpHours: file.helpHours ?? null,
      washingSources: file.washingSources ?? [],
      coldestNightC: file.coldestNightC ?? null,
    },
    settled: { ...file, ...figures, counting, part },
    assumptions,
  };
}
