/** Ids of the user's own points: "own/old-well", and "own/old-well-2" for the second of the name. */
export class OwnIds {
  readonly #given = new Set<string>();

  of(label: string): string {
    const slug =
      label
        .normalize('NFKD')
        .toLowerCase()
        .replace(/\p{M}+/gu, '')
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-+|-+$/g, '') || 'point';
    let id = `own/${slug}`;
    for (let n = 2; this.#given.has(id); n += 1) id = `own/${slug}-${n}`;
    this.#given.add(id);
    return id;
  }
}
