import { type KeyboardEvent, type PointerEvent, useId, useMemo } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { Commodity, Span } from '../../server/contract/common.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { useSize } from '../kit/hooks/use-size.ts';
import { withPlan } from '../levels/plan-report.ts';
import type { Focus } from '../state/focus.ts';
import type { UnitSystem } from '../units/units.ts';
import { chosenAt } from './chosen-at.ts';
import { placeInWords } from './labels/words.ts';
import { StripLegend } from './StripLegend.tsx';
import { StripPicture } from './StripPicture.tsx';
import { stepAlong } from './step-along.ts';
import { stripFrame } from './strip-frame.ts';
import { keyZoom } from './view/key-zoom.ts';
import { StripTools } from './view/StripTools.tsx';
import { holding, isWhole, lengthOf, shownOf } from './view/strip-window.ts';
import { useGestures } from './view/use-gestures.ts';
import './strip.css';
import { t } from '../language/t.ts';

interface Props {
  reply: AnalysisReply;
  /** The plan to go by; null for full tanks at every supply that counts, and empty cans. */
  plan: PlanReply | null;
  units: UnitSystem;
  focus: Focus;
  onFocus(next: Partial<Focus>): void;
}

/** Before the page has been measured, and where there is no page. */
const FIRST_SIZE = { widthPx: 310, heightPx: 720 };

/**
 * The route pulled straight and drawn upright: what is aboard as width, fuel left of the road, water right of it.
 * It is also a slider along the route, by pointer and by keyboard.
 */
export function Strip({ reply, plan, units, focus, onFocus }: Props) {
  const { analysis } = reply;
  const shown = useMemo(() => withPlan(analysis, plan), [analysis, plan]);
  const { lengthKm } = analysis.route;
  const [box, size] = useSize<HTMLDivElement>(FIRST_SIZE);
  const onRoute = useMemo(() => shownOf(focus.onShow, lengthKm), [focus.onShow, lengthKm]);
  const id = useId();
  const patterns = `${id.replace(/[^\w-]/g, '')}-`;
  const frame = useMemo(() => stripFrame(shown, size, onRoute), [shown, size, onRoute]);
  const atKm = focus.atKm === null ? null : Math.min(Math.max(focus.atKm, 0), lengthKm);

  const kmAt = (clientY: number): number => {
    const bounds = box.current?.getBoundingClientRect();
    if (bounds === undefined) return onRoute.fromKm;
    return frame.kmOfY(((clientY - bounds.top) * size.heightPx) / bounds.height);
  };
  const placeOf = (event: PointerEvent<HTMLDivElement>) => {
    const bounds = event.currentTarget.getBoundingClientRect();
    const onLeft = event.clientX - bounds.left < bounds.width / 2;
    return { km: kmAt(event.clientY), commodity: onLeft ? ('fuel' as const) : ('water' as const) };
  };
  const onShown = (next: Span) => onFocus({ onShow: { ...next, by: 'strip' } });
  const gestures = useGestures(box, {
    shown: onRoute,
    lengthKm,
    kmAt,
    heightPx: frame.bottomPx - frame.topPx,
    onShown,
  });
  const choose = (commodity: Commodity, km: number) => {
    const next = chosenAt(analysis, focus, commodity, km);
    if (next !== null) onFocus(next);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.key === 'Enter' && atKm !== null) choose(sideOf(event, analysis), atKm);
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const nearer = keyZoom(event.key, onRoute, lengthKm, atKm);
    if (nearer !== null) return onShown(nearer);
    const next = stepAlong(shown, units, { atKm, visibleKm: lengthOf(onRoute) }, event.key);
    if (next === null) return;
    event.preventDefault();
    const held = holding(onRoute, lengthKm, next);
    onFocus({ atKm: next, ...(held !== onRoute && { onShow: { ...held, by: 'strip' } }) });
  };

  return (
    <div className="strip-frame">
      <div
        ref={box}
        className={isWhole(onRoute, lengthKm) ? 'strip' : 'strip strip-nearer'}
        role="slider"
        tabIndex={0}
        aria-label={t('Along the route')}
        aria-describedby={`${id}keys`}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.round(lengthKm)}
        aria-valuenow={Math.round(atKm ?? 0)}
        aria-valuetext={placeInWords(shown, atKm ?? 0, units)}
        onPointerDown={gestures.onPointerDown}
        onPointerMove={(event) => {
          if (!gestures.onPointerMove(event)) onFocus({ atKm: placeOf(event).km });
        }}
        onPointerUp={gestures.onPointerEnd}
        onPointerCancel={gestures.onPointerEnd}
        onPointerLeave={(event) => {
          gestures.onPointerEnd(event);
          if (event.pointerType === 'mouse') onFocus({ atKm: null });
        }}
        onClick={(event) => {
          if (gestures.wasDragged.current) return;
          const { km, commodity } = placeOf(event as PointerEvent<HTMLDivElement>);
          choose(commodity, km);
        }}
        onKeyDown={onKeyDown}
      >
        <p id={`${id}keys`} hidden>
          {t(
            'Arrow keys move along the route, page keys go from supply to supply. Plus and minus bring it nearer and farther, zero shows all of it. Enter chooses the stretch of fuel, Shift and Enter that of water.',
          )}
        </p>
        <StripPicture {...{ analysis, shown, units, frame, atKm }} gap={focus.gap} patterns={patterns} />
      </div>
      <StripTools shown={onRoute} {...{ lengthKm, onShown }} aboutKm={atKm}>
        <StripLegend planned={shown !== analysis} />
      </StripTools>
    </div>
  );
}

/** Enter chooses on the side of fuel, with Shift on that of water, where there is one. */
const sideOf = ({ shiftKey }: KeyboardEvent, { water }: AnalysisReply['analysis']): Commodity =>
  shiftKey && water.gaps.length > 0 ? 'water' : 'fuel';
