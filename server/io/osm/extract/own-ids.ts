/** Ids of the user's own points: "own/old-well", and "own/old-well-2" for the second of the name. */
export class OwnIds {
  readonly #given = new Set<string>();
  /** The last number that each name was given with: those below it are taken. */
  readonly #last = new Map<string, number>();

  of(label: string): string {
    const slug =
      label
        .normalize('NFKD')
        .toLowerCase()
        .replace(/\p{M}+/gu, '')
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-+|-+$/g, '') || 'point';
    let id = `own/${slug}`;
    for (let n = (this.#last.get(slug) ?? 1) + 1; this.#given.has(id); n += 1) {
      id = `own/${slug}-${n}`;
      this.#last.set(slug, n);
    }
    this.#given.add(id);
    return id;
  }
}
