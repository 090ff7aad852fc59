import { t } from '../language/t.ts';
import type { View } from '../state/tabs.ts';

interface ViewSwitchProps {
  view: View;
  onView: (view: View) => void;
  /** Null while there is no plan that strip and map could go by. */
  byPlan: { checked: boolean; found: boolean; onChange: (checked: boolean) => void } | null;
}

const VIEW_WORDS: Record<View, string> = { strip: t('Strip'), map: t('Map') };

/** What of the route is shown, and whether by the carry plan. */
export function ViewSwitch({ view, onView, byPlan }: ViewSwitchProps) {
  return (
    <fieldset className="view-switch">
      <legend className="only-read">{t('Show the route as')}</legend>
      {(['strip', 'map'] as const).map((each) => (
        <label key={each}>
          <input type="radio" name="view" checked={view === each} onChange={() => onView(each)} />{' '}
          {VIEW_WORDS[each]}
        </label>
      ))}
      {byPlan !== null && (
        <label className="plan-switch">
          <input
            type="checkbox"
            checked={byPlan.checked}
            onChange={({ target }) => byPlan.onChange(target.checked)}
          />{' '}
          {t('With the carry plan')}
          {byPlan.checked && !byPlan.found && t(': there is none')}
        </label>
      )}
    </fieldset>
  );
}
