/** What a client may ask of the server; all ours, for one machine used by one person or a small team. */
export interface Limits {
  /** One uploaded file. A country's .osm.pbf is 0.1 to 4 GB. */
  fileBytes: number;
  /** All of a request. */
  requestBytes: number;
  /** Extracts in one request. */
  extracts: number;
  /** From a request's coming to its last byte. */
  uploadMs: number;
  readMs: number;
  analyseMs: number;
  /** For the solver at one carry plan; ways out are tried for three times as long. */
  planSeconds: number;
  /** Loaded trips kept for re-analysis, and what they may weigh. */
  keptTrips: number;
  keptBytes: number;
  waitingJobs: number;
  /** Heap of a worker. */
  workerHeapMb: number;
  requestsPerMinute: number;
  /** From this machine itself. */
  requestsPerMinuteLocal: number;
}

const MB = 1_000_000;

export const DEFAULT_LIMITS: Limits = {
  fileBytes: 4_000 * MB,
  requestBytes: 8_000 * MB,
  extracts: 20,
  uploadMs: 30 * 60_000,
  readMs: 10 * 60_000,
  analyseMs: 60_000,
  planSeconds: 5,
  keptTrips: 20,
  keptBytes: 400 * MB,
  waitingJobs: 32,
  workerHeapMb: 1_024,
  requestsPerMinute: 300,
  requestsPerMinuteLocal: 60_000,
};
