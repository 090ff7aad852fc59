/** Two minima are two passings when the line goes at least so much further away between them (design rule). */
export const PROMINENCE_M = 1_000;

/** Distances closer than this are a tie, and the earlier place stays: below what doubles of this size resolve safely. */
const TIE_M = 0.001;

/**
 * Turns the distances along the line, told turning point by turning point, into passings: a low is kept when the
 * line rises by `PROMINENCE_M` on either side of it before it falls to a lower one. Cancelling the smallest rise
 * first, the nearer low staying, leaves the same lows as this single pass: either way a low goes exactly when a
 * lower one (an equal one before it) can be reached from it without rising by that much.
 */
export class PassingFilter {
  private lowM = Infinity;
  private lowStep = -1;
  private lowShare = 0;
  private peakM = 0;
  private seekingLow = true;
  private readonly corridorM: number;
  private readonly keep: (step: number, share: number, offM: number) => void;

  /** `keep` is told every passing: its step, the share of that step (0 to 1), and the distance in metres. */
  constructor(corridorM: number, keep: (step: number, share: number, offM: number) => void) {
    this.corridorM = corridorM;
    this.keep = keep;
  }

  /** A local minimum of the distance. Lows beyond the corridor are none: a nearer one would outdo them anyway. */
  low(step: number, share: number, offM: number): void {
    if (offM > this.corridorM) return;
    if (!this.seekingLow) {
      if (this.peakM - offM < PROMINENCE_M) return;
      this.seekingLow = true;
    } else if (offM >= this.lowM - TIE_M) {
      return;
    }
    this.lowM = offM;
    this.lowStep = step;
    this.lowShare = share;
  }

  /** A local maximum of the distance. */
  high(offM: number): void {
    if (!this.seekingLow) {
      if (offM > this.peakM) this.peakM = offM;
    } else if (offM - this.lowM >= PROMINENCE_M) {
      this.settle();
      this.seekingLow = false;
      this.peakM = offM;
    }
  }

  /** The line goes out of sight, or ends: whatever comes next is another passing. */
  leave(): void {
    if (this.seekingLow) this.settle();
    this.seekingLow = true;
    this.peakM = 0;
  }

  private settle(): void {
    if (this.lowM !== Infinity) this.keep(this.lowStep, this.lowShare, this.lowM);
    this.lowM = Infinity;
  }
}
