import type { RigFile } from '../../../contract/rig.ts';
import { drawableL, filledL } from '../../quantity/drawable.ts';

export interface Held {
  /** Drinking grade left when the worst single leak, pump or tap has emptied what it can, all full before; litres. */
  safeL: number;
  /** What that takes away, in words. */
  worstLoss: string;
}

/**
 * Drinking water that no single leak, pump or tap can empty. Fixed tanks are taken to hang on one pump and tap unless
 * they are marked as apart (ours); each owned can stands by itself. What is kept for washing counts nothing.
 */
export function heldSafe({ tanks, cans }: RigFile['water']): Held {
  const fit = tanks.filter((tank) => tank.grade !== 'washing');
  const joined = fit.filter((tank) => !tank.apart);
  const names = joined.map((tank) => `"${tank.name}"`).join(', ');
  const losses = [
    {
      litres: drawableL(joined),
      what: joined.length > 1 ? `the joined tanks ${names}` : `the tank ${names}`,
    },
    ...fit
      .filter((tank) => tank.apart)
      .map((tank) => ({
        litres: drawableL([tank]),
        what: `the tank "${tank.name}"`,
      })),
    ...(cans === undefined || cans.grade === 'washing'
      ? []
      : Array.from({ length: cans.owned }, () => ({ litres: filledL(cans), what: 'one can' }))),
  ];
  const all = losses.reduce((sum, loss) => sum + loss.litres, 0);
  const worst = losses.reduce((most, loss) => (loss.litres > most.litres ? loss : most));
  return { safeL: all - worst.litres, worstLoss: worst.what };
}
