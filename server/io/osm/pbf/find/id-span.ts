/** Ids of one type in one block. */
export interface IdSpan {
  count: number;
  least: number;
  greatest: number;
  /** Each id is greater than the one before. */
  rising: boolean;
}

export const emptySpan = (): IdSpan => ({
  count: 0,
  least: Number.POSITIVE_INFINITY,
  greatest: Number.NEGATIVE_INFINITY,
  rising: true,
});

/** Takes one more id into the span. */
export function widen(span: IdSpan, id: number): void {
  // In a rising run the last id is the greatest.
  if (id <= span.greatest) span.rising = false;
  else span.greatest = id;
  if (id < span.least) span.least = id;
  span.count += 1;
}

/** Takes many ids into the span. */
export function widenByAll(span: IdSpan, ids: Float64Array): void {
  const [first] = ids;
  if (first === undefined) return;
  widen(span, first);
  let before = first;
  let place = 1;
  // The usual case: they rise to the end.
  for (; place < ids.length; place += 1) {
    const id = ids[place] ?? Number.NaN;
    if (!(id > before)) break;
    before = id;
  }
  span.greatest = Math.max(span.greatest, before);
  span.count += place - 1;
  for (const id of ids.subarray(place)) widen(span, id);
}

/** Whether blocks with these spans, in the file's order, can hold one id twice. */
export function mayRepeat(spans: readonly IdSpan[]): boolean {
  if (spans.some((span) => span.count > 0 && !span.rising)) return true;
  const inOrder = spans.filter((span) => span.count > 0).sort((a, b) => a.least - b.least);
  let greatestBefore = Number.NEGATIVE_INFINITY;
  return inOrder.some(({ least, greatest }) => {
    const overlaps = least <= greatestBefore;
    greatestBefore = greatest;
    return overlaps;
  });
}
