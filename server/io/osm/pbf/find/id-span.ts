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

/** Takes the first `count` of `ids` into the span. */
export function widenByAll(span: IdSpan, ids: Float64Array, count: number): void {
  if (count === 0) return;
  widen(span, ids[0]!);
  let before = ids[0]!;
  let place = 1;
  // The usual case: they rise to the end.
  for (; place < count && ids[place]! > before; place += 1) before = ids[place]!;
  span.greatest = Math.max(span.greatest, before);
  span.count += place - 1;
  for (; place < count; place += 1) widen(span, ids[place]!);
}

/** Whether blocks with these spans, in the file's order, can hold one id twice. */
export function mayRepeat(spans: readonly IdSpan[]): boolean {
  if (spans.some((span) => span.count > 0 && !span.rising)) return true;
  // Large files have tens of thousands of blocks: their places are sorted, and no copies made.
  const order: number[] = [];
  for (let place = 0; place < spans.length; place += 1) if (spans[place]!.count > 0) order.push(place);
  order.sort((a, b) => spans[a]!.least - spans[b]!.least);
  return order.some((place, n) => n > 0 && spans[place]!.least <= spans[order[n - 1]!]!.greatest);
}
