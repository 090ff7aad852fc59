import { metricOf, type QuantityKind, type UnitSystem, valueIn } from './conversions.ts';

/** A metric value as the text of a field: four significant figures where converted, as it stands where not. */
export function fieldText(metric: number, kind: QuantityKind, units: UnitSystem): string {
  const value = valueIn(kind, metric, units);
  // Twelve figures take binary noise away; four are finer than any gauge once a value has been converted.
  const figures = value === metric ? 12 : 4;
  return Number.isFinite(value)
    ? String(Number(value.toPrecision(Math.max(figures, wholeFigures(value)))))
    : '';
}

const wholeFigures = (value: number): number => Math.trunc(Math.abs(value)).toString().length;

export type Typed = { ok: true; value: number } | { ok: false; why: string };

/** Reads what was typed, in the reader's units, and gives it in metric. */
export function readTyped(text: string, kind: QuantityKind, units: UnitSystem): Typed {
  const plain = text
    .trim()
    .replace('\u2212', '-')
    .replaceAll(/[\s\u00a0\u202f]/g, '');
  if (plain === '') return { ok: false, why: 'Needs a number.' };
  if (/^-?\d{1,3},\d{3}$/.test(plain)) {
    return {
      ok: false,
      why: `“${text.trim()}” can be read two ways: write it without a comma, or with a point.`,
    };
  }
  const typed = plain.replace(/^(-?\d*),(\d+)$/, '$1.$2');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(typed)) {
    return { ok: false, why: `Needs a number, not “${text.trim()}”.` };
  }
  const metric = metricOf(kind, Number(typed), units);
  if (!Number.isFinite(metric)) return { ok: false, why: 'Needs a number above 0.' };
  // Twelve significant figures: shares typed in per cent stay whole (10 % is 0.1).
  return { ok: true, value: Number(metric.toPrecision(12)) };
}
