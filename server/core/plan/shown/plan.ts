import type { Commodity } from '../../../contract/common.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { MassLevel } from '../drive/masses.ts';
import type { AimReached } from '../model/choice.ts';
import type { SheetHalt } from '../sheet/sheet-halt.ts';
import type { PlanTotals } from '../sheet/totals-of.ts';
import type { PlanBreak } from '../ways-out/plan-break.ts';
import type { PlanCarry, PlanLeg, PlanLevel } from './plan-leg.ts';
import type { PlanStop } from './plan-stop.ts';

type ByCommodity<T> = Readonly<Record<Commodity, T>>;

/** Where to fill, what to carry over which stretch, when to pour; ways out and failures, which only some ask for, left out. */
export interface PlainPlan {
  readonly status: 'found' | 'none' | 'out-of-time';
  /** In order: each was minimised with those before it held. */
  readonly aims: readonly AimReached[];
  readonly cans: ByCommodity<number>;
  readonly mostCans: ByCommodity<number>;
  /** Of the cans of the plan, those beyond what is owned. */
  readonly getCans: ByCommodity<number>;
  /** The whole plan, halt by halt. */
  readonly sheet: readonly SheetHalt[];
  /** Null where there is no plan. */
  readonly totals: PlanTotals | null;
  readonly stops: readonly PlanStop[];
  readonly legs: ByCommodity<readonly PlanLeg[]>;
  readonly carries: readonly PlanCarry[];
  readonly levels: ByCommodity<readonly PlanLevel[]>;
  /** Null where the rig tells no vehicle. */
  readonly masses: readonly MassLevel[] | null;
  /** What the plan rests on that is not known. */
  readonly restsOn: readonly Caution[];
  /** Only where there is none. */
  readonly breaks: readonly PlanBreak[];
}
