/** Where a number is written, px. */
export interface NumberPlace {
  x: number;
  y: number;
}

/** Numbers stand so far apart at least, px: two figures of the small type. */
const APART = { x: 17, y: 14 };
/** Steps tried around the place wished for, nearest first. */
const STEPS = [-3, -2, -1, 0, 1, 2, 3]
  .flatMap((across) => [-3, -2, -1, 0, 1, 2, 3].map((down) => ({ across, down })))
  .sort((a, b) => Math.hypot(a.across, a.down) - Math.hypot(b.across, b.down));

/** Places for numbers, each as near as can be to where it is wished, none on another one. In the order given. */
export function numberPlaces<T extends NumberPlace>(wished: readonly T[]): T[] {
  const taken: T[] = [];
  for (const wish of wished) {
    const free = STEPS.map(({ across, down }) => ({
      x: wish.x + across * APART.x,
      y: wish.y + down * APART.y,
    })).find((place) => taken.every((other) => !tooNear(place, other)));
    taken.push({ ...wish, ...free });
  }
  return taken;
}

const tooNear = (a: NumberPlace, b: NumberPlace): boolean =>
  Math.abs(a.x - b.x) < APART.x && Math.abs(a.y - b.y) < APART.y;
