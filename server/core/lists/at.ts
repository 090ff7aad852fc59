/** An entry of a list; one past its ends is a fault of the program. */
export function at<T>(list: readonly T[], index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new RangeError(`entry ${index} of ${list.length}`);
  return entry;
}

/**
 * The same of packed numbers, for loops over every vertex of a route. One function for each kind of list: the engine's
 * compiler looks such a function up fast where it meets one kind only.
 */
export function numberAt(list: Float64Array, index: number): number {
  const value = list[index];
  if (value === undefined) throw new RangeError(`number ${index} of ${list.length}`);
  return value;
}

/** The same of a plain list of numbers. */
export function numberIn(list: readonly number[], index: number): number {
  const value = list[index];
  if (value === undefined) throw new RangeError(`number ${index} of ${list.length}`);
  return value;
}
