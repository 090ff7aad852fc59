import type { Caution } from '../../core/phrases/cautions.ts';
import type { InRouteFile, RouteFileCode } from '../../core/phrases/readers.ts';

/** Counts what was passed over, or taken with care, with the line where each kind first came up. */
export class Tally {
  private readonly seen = new Map<RouteFileCode, InRouteFile>();

  note(code: RouteFileCode, line: number): void {
    const known = this.seen.get(code);
    if (known === undefined) this.seen.set(code, { count: 1, line });
    else known.count += 1;
  }

  /** One for each kind. */
  cautions(): Caution[] {
    return [...this.seen].map(([code, facts]) => ({ code, facts }));
  }
}
