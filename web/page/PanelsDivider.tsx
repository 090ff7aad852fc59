import type { KeyboardEvent, PointerEvent } from 'react';
import type { KeptAs } from '../kit/hooks/use-setting.ts';
import { t } from '../language/t.ts';

/** Shares of the window's width that the panels take, %. */
const LEAST = 20;
const MOST = 65;
const FIRST = 29;
/** Narrower no table can be read, px; the style sheet holds it as well. */
const LEAST_PX = 370;
/** By one press of an arrow key. */
const STEP = 2;

/** The panels' share as it is kept by the browser; what cannot be read is as at first. */
export const PANEL_WIDTH: KeptAs<number> = {
  key: 'drystage-panels-percent',
  read: (text) => {
    const percent = text === null || text.trim() === '' ? Number.NaN : Number(text);
    return Number.isFinite(percent) ? within(percent) : FIRST;
  },
  write: String,
};

const within = (percent: number): number => Math.min(MOST, Math.max(LEAST, Math.round(percent)));

/** Where a key moves the line between map and panels; null for a key that does not. */
export function percentAfter(key: string, percent: number, windowPx: number): number | null {
  // Below that the panels do not follow: the first press is to be seen.
  const seen = Math.max(percent, (LEAST_PX / windowPx) * 100);
  switch (key) {
    case 'ArrowLeft':
      return within(seen + STEP);
    case 'ArrowRight':
      return within(seen - STEP);
    case 'Home':
      return LEAST;
    case 'End':
      return MOST;
    default:
      return null;
  }
}

interface PanelsDividerProps {
  percent: number;
  onPercent: (percent: number) => void;
  /** Id of the panels. */
  controls: string;
}

/** The line between map and panels: dragged, or moved by the arrow keys (the window splitter pattern of the WAI-ARIA Authoring Practices). */
export function PanelsDivider({ percent, onPercent, controls }: PanelsDividerProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    const next = percentAfter(event.key, percent, window.innerWidth);
    if (next === null || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onPercent(next);
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (event.currentTarget.hasPointerCapture(event.pointerId))
      onPercent(within(100 - (event.clientX / window.innerWidth) * 100));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule takes no focus; this one is moved by keys
    <div
      className="panels-divider"
      role="separator"
      tabIndex={0}
      aria-label={t('Width of the panels')}
      aria-orientation="vertical"
      aria-controls={controls}
      aria-valuemin={LEAST}
      aria-valuemax={MOST}
      aria-valuenow={percent}
      aria-valuetext={t`${percent} % of the window`}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={onPointerMove}
      onDoubleClick={() => onPercent(FIRST)}
    />
  );
}
