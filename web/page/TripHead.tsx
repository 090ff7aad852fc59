import type { ReactNode } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { ThemeChoice } from '../kit/hooks/use-theme.ts';
import { formatDays, formatFigure, formatKm, type UnitSystem } from '../units/units.ts';

export interface TripHeadProps {
  analysis: Analysis | null;
  units: UnitSystem;
  theme: ThemeChoice;
  onUnits: (units: UnitSystem) => void;
  onTheme: (theme: ThemeChoice) => void;
  onOpen: () => void;
  /** How what is said is kept, and what was changed. */
  keep: ReactNode;
}

/** Whose trip this is, and the three things that concern the whole page: other files, units, light. */
export function TripHead({ analysis, units, theme, onUnits, onTheme, onOpen, keep }: TripHeadProps) {
  return (
    <div className="trip-head">
      <div className="name-row">
        <h1>Drystage</h1>
        <select
          aria-label="Units"
          value={units}
          onChange={(event) => onUnits(event.target.value as UnitSystem)}
        >
          <option value="metric">km, l</option>
          <option value="us">mi, US gal</option>
          <option value="imperial">mi, imp gal</option>
        </select>
        <select
          aria-label="Light or dark"
          value={theme}
          onChange={(event) => onTheme(event.target.value as ThemeChoice)}
        >
          <option value="system">auto</option>
          <option value="light">light</option>
          <option value="dark">dark</option>
        </select>
      </div>
      {analysis !== null && (
        <p>
          <b>{analysis.route.name}</b>
          <br />
          {formatKm(analysis.route.lengthKm, units)}, {daysOf(analysis)}
          <br />
          {analysis.rig.name ?? 'unnamed rig'}
        </p>
      )}
      {keep}
      <button type="button" className="main" onClick={onOpen}>
        Open your own route
      </button>
    </div>
  );
}

/** Days on the way: one more than the nights, when nights are known; else the sum of the stretches. */
function daysOf(analysis: Analysis): string {
  if (analysis.nights.length > 0) {
    const days = analysis.nights.length + 1;
    return `${formatFigure(days, 0)}\u00a0days`;
  }
  return formatDays(analysis.water.gaps.reduce((sum, gap) => sum + gap.days, 0));
}
