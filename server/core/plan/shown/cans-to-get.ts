import type { RigFile } from '../../../contract/rig.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { ownedCans } from '../question/can-kg.ts';
import { type Cans, cansBeyond } from '../question/can-limits.ts';
import { byCommodity } from '../side/other-of.ts';

/** Cans beyond the owned ones, by commodity. */
export const cansToGet = (rig: RigFile, cans: Cans): Cans =>
  cansBeyond(
    cans,
    byCommodity((commodity) => ownedCans(rig, commodity)),
  );

/** That cans are to be got before the plan is one. */
export const cansToGetCautions = (rig: RigFile, getCans: Cans): Caution[] =>
  COMMODITIES.filter((commodity) => getCans[commodity] > 0).map((commodity) => ({
    code: 'plan-cans-to-get',
    facts: { commodity, cans: getCans[commodity], owned: ownedCans(rig, commodity) },
  }));
