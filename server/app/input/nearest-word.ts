/** Edits (insert, delete, replace) that turn one word into another: Levenshtein's distance, case aside. */
function editsBetween(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const replace = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, replace));
    }
    row = next;
  }
  return row[to.length]!;
}

/**
 * The known word that was most likely meant, or null when none is near: at most one edit for each three letters, or one
 * word beginning with the other.
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const given = word.toLowerCase().slice(0, 60);
  let best: string | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const target = candidate.toLowerCase();
    const opens = given.length >= 3 && (target.startsWith(given) || given.startsWith(target));
    const edits = opens ? 1 : editsBetween(given, target);
    if (edits <= Math.max(1, Math.floor(target.length / 3)) && edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  return best;
}
