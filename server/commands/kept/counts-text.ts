import type { KeptExtract } from '../../contract/kept.ts';

/** What is found in an extract. */
export const countsText = ({ counts }: KeptExtract): string =>
  `${counts.supplies} supplies, ${counts.ground} roads and places`;
