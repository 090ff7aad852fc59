/** Each entry with the one after it, in order; none of a list of fewer than two. */
export function pairsOf<T>(list: readonly T[]): [T, T][] {
  const [first, ...others] = list;
  if (first === undefined) return [];
  let before: T = first;
  return others.map((next): [T, T] => {
    const pair: [T, T] = [before, next];
    before = next;
    return pair;
  });
}
