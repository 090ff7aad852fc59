import { useState } from 'react';
import type { Surface } from '../../server/contract/surface.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

interface MarkedPlacesProps {
  /** The last places chosen on strip or map, km, latest last. */
  marked: readonly number[];
  units: UnitSystem;
  onCamp: (atKm: number) => void;
  onRestDay: (atKm: number) => void;
  onSurface: (fromKm: number, toKm: number, surface: Surface) => void;
}

/** What can be done at the place, or between the two places, last chosen on strip or map. */
export function MarkedPlaces({ marked, units, onCamp, onRestDay, onSurface }: MarkedPlacesProps) {
  const [surface, setSurface] = useState<Surface>('gravel');
  const last = marked.at(-1);
  const before = marked.at(-2);
  if (last === undefined) {
    return (
      <p className="soft">
        {t(
          'Click on the strip or on the route on the map, or press Enter on the strip, to mark a place for a camp or a rest day; two places mark a stretch of one surface.',
        )}
      </p>
    );
  }
  return (
    <div className="marked">
      <p className="actions">
        <b>{tx`Marked ${formatAtKm(last, units)}:`}</b>{' '}
        <button type="button" onClick={() => onCamp(last)}>
          {t('Camp here')}
        </button>{' '}
        <button type="button" onClick={() => onRestDay(last)}>
          {t('A rest day here')}
        </button>
      </p>
      {before !== undefined && before !== last ? (
        <p className="actions">
          <b>{tx`${formatAtKm(Math.min(before, last), units)} to ${formatAtKm(Math.max(before, last), units)}:`}</b>{' '}
          <select
            aria-label={t('Surface of the marked stretch')}
            value={surface}
            onChange={(event) =>
              setSurface(SURFACE_CHOICES.find(({ value }) => value === event.target.value)?.value ?? surface)
            }
          >
            {SURFACE_CHOICES.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>{' '}
          <button type="button" onClick={() => onSurface(before, last, surface)}>
            {t('Mark the surface')}
          </button>
        </p>
      ) : (
        <p className="soft">{t('Mark a second place for a stretch of one surface.')}</p>
      )}
    </div>
  );
}
