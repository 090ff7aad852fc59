/** Numbers from 0 to 1, the same for a seed (mulberry32, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let word = Math.imul(state ^ (state >>> 15), state | 1);
    word = (word + Math.imul(word ^ (word >>> 7), word | 61)) ^ word;
    return ((word ^ (word >>> 14)) >>> 0) / 2 ** 32;
  };
}
