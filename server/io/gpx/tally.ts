import type { Caution } from '../../contract/common.ts';

/** What a file had that was passed over, or taken with care; each becomes one caution with its first place. */
const SAYINGS = {
  'gpx-old': () => 'The file is GPX 1.0, an old form',
  'gpx-version': () => 'The file names no GPX version that is known; it was read as 1.1',
  'gpx-empty-part': (n: number) => `${n} track(s), route(s) or segment(s) without points passed over`,
  'gpx-stray-points': (n: number) => `${n} point(s) outside a track segment or route passed over`,
  'gpx-no-segment': (n: number) => `${n} track point(s) directly in a track, taken as a segment`,
  'gpx-shape-points': (n: number) =>
    `${n} extension point(s) that shape the way between route points passed over: the route runs straight between its route points`,
  'gpx-elevation-unread': (n: number) => `${n} elevation(s) that are not numbers passed over`,
  'gpx-longitude-180': (n: number) => `${n} point(s) at longitude 180, which GPX writes as -180`,
  'gpx-damaged-text': (n: number) =>
    `Characters that are not valid in the file's encoding, shown as a replacement mark (in ${n} place(s) or more)`,
} satisfies Record<string, (count: number) => string>;
type Saying = keyof typeof SAYINGS;

/** Counts what was passed over, with the line where each kind first came up. */
export class Tally {
  private readonly seen = new Map<Saying, { count: number; line: number }>();

  note(saying: Saying, line: number): void {
    const known = this.seen.get(saying);
    if (known === undefined) this.seen.set(saying, { count: 1, line });
    else known.count += 1;
  }

  cautions(): Caution[] {
    return [...this.seen].map(([code, { count, line }]) => ({
      code,
      text: `${SAYINGS[code](count)} (route file, line ${line}${count > 1 ? ' on' : ''})`,
    }));
  }
}
