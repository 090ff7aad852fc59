import { at } from '../../core/lists/at.ts';

/** Edits (insert, delete, replace) that turn one word into another: Levenshtein's distance, case aside. */
function editsBetween(from: string, to: string): number {
  // Edits from what was taken of `from` so far to each beginning of `to`, the empty one first.
  let row = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (const [index, letter] of from.split('').entries()) {
    const next = [index + 1];
    for (const [place, target] of to.split('').entries()) {
      const replacing = at(row, place) + (letter === target ? 0 : 1);
      next.push(Math.min(at(row, place + 1) + 1, at(next, place) + 1, replacing));
    }
    row = next;
  }
  return at(row, to.length);
}

/**
 * The known word that was most likely meant, or null when none is near: at most one edit for each three letters, or one
 * word beginning with the other.
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const typo = word.toLowerCase().slice(0, 60);
  let best: string | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const target = candidate.toLowerCase();
    const opens = typo.length >= 3 && (target.startsWith(typo) || typo.startsWith(target));
    const edits = opens ? 1 : editsBetween(typo, target);
    if (edits <= Math.max(1, Math.floor(target.length / 3)) && edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  return best;
}
