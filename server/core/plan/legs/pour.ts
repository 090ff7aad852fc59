/** When the cans of a leg are poured into the tanks. */
export interface PourFacts {
  /** Drawable litres of the fixed tanks. */
  capacityL: number;
  /** In them on leaving. */
  tankL: number;
  canL: number;
  cans: number;
}

/**
 * Litres used since leaving at which each can is poured, first to last: when the tanks first have room for a whole one.
 * A can larger than the tanks is drawn from once they are empty, and the next once it is.
 */
export function pourAfterL({ capacityL, tankL, canL, cans }: PourFacts): number[] {
  const firstL = canL <= capacityL ? canL - (capacityL - tankL) : tankL;
  return Array.from({ length: cans }, (_, index) => Math.max(0, firstL + index * canL));
}

/** What is in the tanks and in each can after so many litres were used. */
export function aboardAfter(facts: PourFacts, usedL: number): { tankL: number; cansL: number[] } {
  const { capacityL, canL, tankL } = facts;
  const whole = canL <= capacityL;
  let tank = tankL - usedL;
  const cansL = pourAfterL(facts).map((afterL) => {
    if (usedL < afterL) return canL;
    if (whole) {
      tank += canL;
      return 0;
    }
    const drawn = Math.min(canL, usedL - afterL);
    tank += drawn;
    return canL - drawn;
  });
  return { tankL: tank, cansL };
}
