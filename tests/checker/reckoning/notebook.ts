/** Litres, km and kg of two computations agree within this share: the noise of floats over sums of some hundred terms. */
const NOISE = 1e-6;

export const isClose = (a: number, b: number): boolean => Math.abs(a - b) <= NOISE * Math.max(1, Math.abs(b));
/** Not below, but for noise. */
export const isAtLeast = (a: number, b: number): boolean => a >= b - NOISE * Math.max(1, Math.abs(b));

/** What was checked, and where the plan and the checker disagree. */
export class Notebook {
  readonly disagreements: string[] = [];
  /** How often each check was made. */
  readonly made = new Map<string, number>();

  #note(check: string): void {
    this.made.set(check, (this.made.get(check) ?? 0) + 1);
  }

  holds(check: string, holds: boolean, place: string): void {
    this.#note(check);
    if (!holds) this.disagreements.push(`${check}: ${place}`);
  }

  /** All that stands in another, each disagreement with a word before it. */
  add({ disagreements, made }: Notebook, before = ''): void {
    for (const one of disagreements) this.disagreements.push(`${before}${one}`);
    for (const [check, times] of made) this.made.set(check, (this.made.get(check) ?? 0) + times);
  }

  close(check: string, { says, own }: { says: number; own: number }, place: string): void {
    this.holds(check, isClose(says, own), `${place}: says ${says}, by own arithmetic ${own}`);
  }

  atLeast(check: string, { says, own }: { says: number; own: number }, place: string): void {
    this.holds(check, isAtLeast(says, own), `${place}: says ${says}, by own arithmetic at least ${own}`);
  }
}
