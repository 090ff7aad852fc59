import type { Analysis } from '../../core/analyse/analysis.ts';

/** What the sentences on top are made from. */
export type AnswerFacts = Pick<
  Analysis,
  'fuel' | 'water' | 'noData' | 'passings' | 'rig' | 'onwardTold' | 'cautions'
>;
