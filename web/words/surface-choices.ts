import type { Surface } from '../../server/contract/surface.ts';
import { t } from '../language/t.ts';

/** The compiler finds the missing row: the page takes types of the contract only, its lists would bring the schemas along. */
const WORDS: Record<Surface, string> = {
  sealed: t('sealed'),
  gravel: t('gravel'),
  track: t('track'),
  sand: t('sand'),
  rock: t('rock'),
  mud: t('mud'),
  salt: t('salt'),
  unknown: t('unknown'),
};

/** The surfaces as choices, best first. */
export const SURFACE_CHOICES = (Object.keys(WORDS) as Surface[]).map((value) => ({
  value,
  words: WORDS[value],
}));
