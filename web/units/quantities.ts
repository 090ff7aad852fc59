import { DECIMAL_SIGN } from '../language/language.ts';
import { t } from '../language/t.ts';
import { metricOf, type QuantityKind, type UnitSystem, valueIn } from './conversions.ts';

/** Twelve figures take binary noise away: shares typed in per cent stay whole (10 % is 0.1). */
const withoutNoise = (value: number): number => Number(value.toPrecision(12));
/** Four are finer than any gauge once a value has been converted; people type up to six. */
const LEAST_FIGURES = 4;
const MOST_TYPED_FIGURES = 6;

/**
 * A metric value as the text of a field: as it stands where it is not converted. Where it is, as it was typed in
 * the reader's units if some six figures read back to just that value, else with four significant figures.
 */
export function fieldText(metric: number, kind: QuantityKind, units: UnitSystem): string {
  const value = valueIn(kind, metric, units);
  if (!Number.isFinite(value)) return '';
  return String(value === metric ? withoutNoise(value) : fieldFigure(metric, kind, units)).replace(
    '.',
    DECIMAL_SIGN,
  );
}

function fieldFigure(metric: number, kind: QuantityKind, units: UnitSystem): number {
  const value = valueIn(kind, metric, units);
  const least = Math.max(LEAST_FIGURES, wholeFigures(value));
  for (let figures = least; figures <= MOST_TYPED_FIGURES; figures += 1) {
    const typed = Number(value.toPrecision(figures));
    if (withoutNoise(metricOf(kind, typed, units)) === metric) return typed;
  }
  return Number(value.toPrecision(least));
}

const wholeFigures = (value: number): number => Math.trunc(Math.abs(value)).toString().length;

export type Typed = { ok: true; value: number } | { ok: false; why: string };

/** The sign that parts thousands for the reader, and three figures after it: to others it is a decimal sign. */
const TWO_WAYS = DECIMAL_SIGN === ',' ? /^-?\d{1,3}\.\d{3}$/ : /^-?\d{1,3},\d{3}$/;

/** Reads what was typed, in the reader's units, and gives it in metric. */
export function readTyped(text: string, kind: QuantityKind, units: UnitSystem): Typed {
  const plain = text
    .trim()
    .replace('\u2212', '-')
    .replaceAll(/[\s\u00a0\u202f]/g, '');
  if (plain === '') return { ok: false, why: t('Needs a number.') };
  if (TWO_WAYS.test(plain)) {
    return {
      ok: false,
      why: t`“${text.trim()}” can be read two ways: write it without a comma, or with a point.`,
    };
  }
  const typed = plain.replace(/^(-?\d*),(\d+)$/, '$1.$2');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(typed)) {
    return { ok: false, why: t`Needs a number, not “${text.trim()}”.` };
  }
  const metric = metricOf(kind, Number(typed), units);
  if (!Number.isFinite(metric)) return { ok: false, why: t('Needs a number above 0.') };
  return { ok: true, value: withoutNoise(metric) };
}
