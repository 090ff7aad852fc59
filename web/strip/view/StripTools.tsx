import type { ReactNode } from 'react';
import type { Span } from '../../../server/contract/common.ts';
import { t } from '../../language/t.ts';
import { isWhole, STEP_TIMES, wholeRoute, zoomed } from './strip-window.ts';

interface Props {
  shown: Span;
  lengthKm: number;
  /** The place that stays where it is; the middle where none is pointed at. */
  aboutKm: number | null;
  onShown(next: Span): void;
  /** What stands beside the buttons. */
  children: ReactNode;
}

/** Buttons for those who have neither wheel nor fingers on the strip. */
export function StripTools({ shown, lengthKm, aboutKm, onShown, children }: Props) {
  const about = aboutKm ?? (shown.fromKm + shown.toKm) / 2;
  const whole = isWhole(shown, lengthKm);
  const nearer = (times: number) => onShown(zoomed(shown, lengthKm, { times, aboutKm: about }));
  return (
    <div className="strip-tools">
      <button type="button" aria-label={t('Strip nearer')} onClick={() => nearer(STEP_TIMES)}>
        +
      </button>
      <button
        type="button"
        aria-label={t('Strip farther')}
        disabled={whole}
        onClick={() => nearer(1 / STEP_TIMES)}
      >
        −
      </button>
      <button type="button" disabled={whole} onClick={() => onShown(wholeRoute(lengthKm))}>
        {t('Whole route')}
      </button>
      {children}
    </div>
  );
}
