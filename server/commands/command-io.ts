/** Where a run of the command reads and writes; process gives the real one. */
export interface CommandIo {
  out: (text: string) => void;
  err: (text: string) => void;
  /** Whether stderr is a terminal, for the progress line. */
  terminal: boolean;
  /** Seconds for the solver at a plan, where not the usual. */
  planSeconds?: number;
}
