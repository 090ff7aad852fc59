import type { Term } from '../../server/contract/analysis.ts';
import {
  formatFigure,
  formatKm,
  formatLitres,
  formatMass,
  formatPressure,
  type UnitSystem,
} from '../units/units.ts';

/** What a figure was summed from, term by term. */
export function Terms({ terms, units }: { terms: readonly Term[]; units: UnitSystem }) {
  return (
    <dl className="terms">
      {terms.map((term) => (
        <div key={`${term.label} ${term.value}`}>
          <dt>{term.label}</dt>
          <dd>{termText(term, units)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Distances, volumes, masses and pressures in the reader's units; rates and shares as they were reckoned with. */
function termText(term: Term, units: UnitSystem): string {
  if (units !== 'metric') {
    if (term.unit === 'km') return formatKm(term.value, units);
    if (term.unit === 'l') return formatLitres(term.value, units);
    if (term.unit === 'kg') return formatMass(term.value, units);
    if (term.unit === 'kPa') return formatPressure(term.value, units);
  }
  return `${formatFigure(term.value, 2)}\u00a0${term.unit}`.trim();
}
