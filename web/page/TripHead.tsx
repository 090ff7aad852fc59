import type { ReactNode } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { LANGUAGES } from '../../server/words/parts/language.ts';
import type { ThemeChoice } from '../kit/hooks/use-theme.ts';
import { chooseLanguage, LANGUAGE_NAMES, language } from '../language/language.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatDays, formatKm, type UnitSystem } from '../units/units.ts';
import { UnitsChoice } from './UnitsChoice.tsx';

export interface TripHeadProps {
  analysis: Analysis | null;
  /** The plan to go by. */
  plan: PlanReply | null;
  units: UnitSystem;
  theme: ThemeChoice;
  onUnits: (units: UnitSystem) => void;
  onTheme: (theme: ThemeChoice) => void;
  onOpen: () => void;
  /** How what is said is kept, and what was changed. */
  keep: ReactNode;
}

/** Whose trip this is, and the three things that concern the whole page: other files, units, light. */
export function TripHead(props: TripHeadProps) {
  const { analysis, plan, units, theme, onUnits, onTheme, onOpen, keep } = props;
  return (
    <div className="trip-head">
      <div className="name-row">
        <h1>{t('Drystage')}</h1>
        <UnitsChoice {...{ units, onUnits }} />
        <select
          aria-label={t('Language')}
          value={language}
          onChange={({ target }) =>
            chooseLanguage(LANGUAGES.find((each) => each === target.value) ?? language)
          }
        >
          {LANGUAGES.map((each) => (
            <option key={each} value={each} lang={each}>
              {LANGUAGE_NAMES[each]}
            </option>
          ))}
        </select>
        <select
          aria-label={t('Light or dark')}
          value={theme}
          onChange={(event) => onTheme(event.target.value as ThemeChoice)}
        >
          <option value="system">{t('auto')}</option>
          <option value="light">{t('light')}</option>
          <option value="dark">{t('dark')}</option>
        </select>
      </div>
      {analysis !== null && (
        <p>
          <b>{analysis.route.name}</b> <span className="quantity">{lengthWords(analysis, units)}</span>,{' '}
          <span className="quantity">{daysOf(analysis, plan)}</span>. {analysis.rig.name ?? t('Unnamed rig')}
        </p>
      )}
      <div className="keep-place">
        <button
          type="button"
          className="main"
          onClick={onOpen}
        >{tx`Open${<span className="only-read">{t(' a route')}</span>}`}</button>
        {keep}
      </div>
    </div>
  );
}

/** The way as driven; what the line only jumps over is told apart. */
function lengthWords({ route, cautions }: Analysis, units: UnitSystem): string {
  const jumpedKm = cautions.reduce(
    (sum, { code, fromKm = 0, toKm = fromKm }) => (code === 'bridge' ? sum + toKm - fromKm : sum),
    0,
  );
  return jumpedKm === 0
    ? formatKm(route.lengthKm, units)
    : t`${formatKm(route.lengthKm - jumpedKm, units)} and ${formatKm(jumpedKm, units)} in straight jumps`;
}

/** Days on the way, by the plan where there is one. */
function daysOf(analysis: Analysis, plan: PlanReply | null): string {
  const planned = plan?.plan.status === 'found' ? plan.plan.totals?.days : undefined;
  if (planned !== undefined) return t`${formatDays(planned)} by the plan`;
  if (analysis.nights.length > 0) return formatDays(analysis.nights.length + 1);
  return formatDays(analysis.water.gaps.reduce((sum, gap) => sum + gap.days, 0));
}
