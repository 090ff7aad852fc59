import type { Commodity } from '../../../contract/common.ts';
import { numberAt } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { mostCansAt } from '../legs/leg.ts';
import type { Choice, PlannedLeg } from '../model/choice.ts';
import { covers, kgPerLitre, lessAtStartL, stretchesOf } from '../model/mass-rows.ts';
import { type Mip, MipBuilder, type MipEntry, type MipSolver } from '../model/mip.ts';
import { mostShortL } from '../model/most-short.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { MassLimit } from '../question/mass-room.ts';
import { byCommodity } from '../side/other-of.ts';

/** Seconds for what to leave out: a model of a few columns. */
const SECONDS = 5;
/** Solver noise is no litre. */
const NOISE_L = 1e-6;

/** The last aim: as little as may be left out of the tanks for the sake of the permitted masses. */
export function withShortFills(question: CarryQuestion, choice: Choice, solver: MipSolver): Choice {
  const model = shortFillModel(question, choice);
  if (model === null) return choice;
  const { mip, legs } = model;
  const cost = new Float64Array(mip.columns.length).fill(1);
  const { values, status } = solver(mip, cost, { seconds: SECONDS, start: null });
  if (values === null) throw new Error(`what to leave out of the tanks came out ${status}`);
  const short = ({ leg, column }: ShortColumn): PlannedLeg => ({
    ...leg,
    shortL: withoutNoise(numberAt(values, column)),
  });
  const value = values.reduce((sum, litres) => sum + withoutNoise(litres), 0);
  return {
    ...choice,
    legs: byCommodity((commodity) => legs[commodity].map(short)),
    aims: [...choice.aims, { aim: 'short-fill-l', value, proven: status === 'optimal', gap: 0 }],
  };
}

const withoutNoise = (litres: number): number => (litres < NOISE_L ? 0 : litres);

/** A chosen leg and the column of what it leaves out. */
interface ShortColumn {
  readonly leg: PlannedLeg;
  readonly column: number;
}

interface ShortFillModel {
  readonly mip: Mip;
  readonly legs: Readonly<Record<Commodity, readonly ShortColumn[]>>;
}

/**
 * What the legs of a choice leave out of the tanks, as a model: one column for each leg, minimised together. Null where
 * the permitted masses hold with full tanks.
 */
function shortFillModel(question: CarryQuestion, choice: Choice): ShortFillModel | null {
  const { room } = question;
  if (room === null) return null;
  const builder = new MipBuilder();
  const legs = byCommodity((commodity) =>
    choice.legs[commodity].map((leg): ShortColumn => {
      const column = builder.column(0, mostShortL(question, commodity, leg), false);
      return { leg, column };
    }),
  );
  for (const stretchM of stretchesOf(question)) {
    const covering = byCommodity((commodity) =>
      legs[commodity].filter(({ leg }) => covers(question.sides[commodity], leg, stretchM)),
    );
    for (const limit of room.limits) {
      const kg = fullKg(question, { covering, cans: choice.cans, stretchM }, limit);
      if (kg > limit.leftKg) builder.atMost(limit.leftKg - kg, relief(question, covering, limit));
    }
  }
  return builder.rows.length > 0 ? { mip: builder, legs } : null;
}

interface OnStretch {
  readonly covering: ShortFillModel['legs'];
  readonly cans: Choice['cans'];
  readonly stretchM: number;
}

/** What cans and legs take of a limit on a stretch with full tanks. */
function fullKg({ sides }: CarryQuestion, { covering, cans, stretchM }: OnStretch, limit: MassLimit): number {
  let kg = 0;
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const { empty, filling } = limit.canKg[commodity];
    kg += cans[commodity] * empty;
    for (const { leg } of covering[commodity])
      kg +=
        mostCansAt(side, leg, stretchM) * filling -
        lessAtStartL(side, leg, stretchM) * kgPerLitre(limit, side, leg);
  }
  return kg;
}

/** What each litre that the legs leave out takes off a limit. */
const relief = ({ sides }: CarryQuestion, covering: ShortFillModel['legs'], limit: MassLimit): MipEntry[] =>
  COMMODITIES.flatMap((commodity) =>
    covering[commodity].flatMap(({ leg, column }): MipEntry[] => {
      const kg = kgPerLitre(limit, sides[commodity], leg);
      return kg > 0 ? [[column, -kg]] : [];
    }),
  );
