import type { Term } from '../../server/contract/analysis.ts';
import { t } from '../language/t.ts';
import { kindOf, valueIn } from '../units/conversions.ts';
import { formatAs, formatFigure, formatKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { inUnits } from '../words/said.ts';

/** What a figure was summed from, term by term. */
export function Terms({ terms, units }: { terms: readonly Term[]; units: UnitSystem }) {
  return (
    <dl className="terms">
      {terms.map((term) => (
        <div key={`${term.label} ${term.value}`}>
          <dt>{inUnits(units, term.label, term.labelParts)}</dt>
          <dd>{termText(term, units)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Figures in the reader's units; shares and factors, and what they have in metric, as they were reckoned with. */
function termText({ value, unit }: Term, units: UnitSystem): string {
  const known = kindOf(unit);
  const kind = known === null || valueIn(known, 1, units) === 1 ? null : known;
  if (kind === 'distance') return formatKm(value, units);
  if (kind === 'volume') return formatLitres(value, units);
  if (kind === 'mass' || kind === 'pressure') return formatAs(kind, value, units);
  return kind === null ? `${formatFigure(value, 2)}\u00a0${t(unit)}`.trim() : formatAs(kind, value, units, 2);
}
