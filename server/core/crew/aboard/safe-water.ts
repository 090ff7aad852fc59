import type { RigFile } from '../../../contract/rig.ts';
import type { Loss } from '../../phrases/rig/crew.ts';
import { drawableL, filledL } from '../../quantity/drawable.ts';

/** Drinking water that is left whatever fails. */
export interface SafeWater {
  /** Drinking grade left when the worst single leak, pump or tap has emptied what it can, all full before; litres. */
  readonly safeL: number;
  /** What that takes away. */
  readonly worstLoss: Loss;
}

/**
 * Drinking water that no single leak, pump or tap can empty. Fixed tanks are taken to hang on one pump and tap unless
 * they are marked as apart (ours); each owned can stands by itself. What is kept for washing counts nothing.
 */
export function safeWater({ tanks, cans }: RigFile['water']): SafeWater {
  const fit = tanks.filter((tank) => tank.grade !== 'washing');
  const lossOf = (lost: typeof fit): LossL => ({
    litres: drawableL(lost),
    loss: { phrase: 'tank-lost', facts: { names: lost.map((tank) => tank.name) } },
  });
  const losses = [
    lossOf(fit.filter((tank) => !tank.apart)),
    ...fit.filter((tank) => tank.apart).map((tank) => lossOf([tank])),
    ...(cans === undefined || cans.grade === 'washing'
      ? []
      : Array.from({ length: cans.owned }, (): LossL => ({ litres: filledL(cans), loss: CAN_LOST }))),
  ];
  const all = losses.reduce((sum, { litres }) => sum + litres, 0);
  const worst = losses.reduce((most, one) => (one.litres > most.litres ? one : most));
  return { safeL: all - worst.litres, worstLoss: worst.loss };
}

interface LossL {
  readonly litres: number;
  readonly loss: Loss;
}

const CAN_LOST: Loss = { phrase: 'can-lost', facts: {} };
