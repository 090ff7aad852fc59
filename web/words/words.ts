import type { Gap } from '../../server/contract/analysis.ts';
import type { Commodity, Evidence, Verdict, WaterClass } from '../../server/contract/common.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { t } from '../language/t.ts';

/*
 * The glossary: what the page calls what the contract names. Whoever plans a journey says "relied on", not "counts".
 */

export const VERDICT_WORDS: Record<Verdict, string> = {
  enough: t('enough'),
  'into-reserve': t('into the reserve'),
  short: t('runs dry'),
  unknown: t('not known'),
};

/** Of a supply point. */
export const countsWords = (counts: boolean): string => (counts ? t('relied on') : t('not relied on'));

/** Worst last. */
const SEVERITY: Record<Verdict, number> = { enough: 0, 'into-reserve': 1, unknown: 2, short: 3 };
export const severityOf = (verdict: Verdict): number => SEVERITY[verdict];

/** The stretch that asks for most attention: by verdict, then by margin, then the first; undefined without any. */
export const worstOf = <Stretch extends Pick<Gap, 'verdict' | 'marginL'>>(
  stretches: readonly Stretch[],
): Stretch | undefined =>
  stretches.toSorted((a, b) => severityOf(b.verdict) - severityOf(a.verdict) || a.marginL - b.marginL)[0];

export const EVIDENCE_WORDS: Record<Evidence, string> = {
  confirmed: t('confirmed'),
  stated: t('listed'),
  implied: t('likely'),
  doubtful: t('doubtful'),
};

/** Best first. */
const STRENGTH: Record<Evidence, number> = { confirmed: 0, stated: 1, implied: 2, doubtful: 3 };
export const strengthOf = (evidence: Evidence): number => STRENGTH[evidence];

export const FUEL_WORDS: Record<FuelKind, string> = {
  diesel: t('diesel'),
  petrol: t('petrol'),
  lpg: 'LPG',
  cng: 'CNG',
  kerosene: t('Kerosene'),
  lng: 'LNG',
  e85: 'E85',
};

export const WATER_CLASS_WORDS: Record<WaterClass, string> = {
  drinking: t('fit to drink as it is'),
  treatable: t('to be treated before drinking'),
  washing: t('for washing only'),
  none: t('not for drinking or washing'),
};

export const commodityWords = (commodity: Commodity, fuel: FuelKind): string =>
  commodity === 'fuel' ? FUEL_WORDS[fuel] : t('drinking water');

/** With a capital at its beginning, as a sentence has it. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** An edge's name, or what it is where it has none. */
export function edgeName(edge: Gap['from']): string {
  if (edge.name !== null && edge.name !== '') return edge.name;
  if (edge.kind === 'start') return t('Start');
  if (edge.kind === 'end') return t('End of route');
  return edge.id ?? t('unnamed point');
}
