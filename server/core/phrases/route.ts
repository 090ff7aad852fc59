/** What measuring a route warns of; metres. */
export interface LineCautions {
  /** `sought`: whether supplies are sought on the straight line. */
  bridge: { atM: number; jumpM: number; sought: boolean };
  'sparse-steps': { steps: number; longestM: number; overM: number };
  'routes-left-out': { tracks: number; routes: number };
}
