import { type KeyboardEvent, type PointerEvent, useId, useMemo } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { Span } from '../../server/contract/common.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { useSize } from '../kit/hooks/use-size.ts';
import { fullLitres, gapIndexAt, stretchesWithoutCover } from '../levels/levels.ts';
import { type StripAnalysis, type StripReport, withPlan } from '../levels/plan-report.ts';
import { StripPatterns } from '../marks/StripPatterns.tsx';
import { flatSurfaces } from '../state/edit-trip.ts';
import type { Focus } from '../state/focus.ts';
import { formatLitres, type UnitSystem } from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { edgeWords, placeInWords } from './labels/words.ts';
import { StripHalf } from './StripHalf.tsx';
import { StripLegend } from './StripLegend.tsx';
import { StripReadout } from './StripReadout.tsx';
import { StripRoad } from './StripRoad.tsx';
import { stepAlong } from './step-along.ts';
import { type StripFrame, stripFrame } from './strip-frame.ts';
import { STEP_TIMES, StripTools } from './view/StripTools.tsx';
import { holding, isWhole, lengthOf, shownOf, wholeRoute, zoomed } from './view/strip-window.ts';
import { useGestures } from './view/use-gestures.ts';
import './strip.css';
import { commodityWords } from '../words/words.ts';

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
  const choose = (commodity: 'fuel' | 'water', km: number) => {
    const index = gapIndexAt(analysis[commodity], km);
    if (index < 0) return;
    const again = focus.gap?.commodity === commodity && focus.gap.index === index;
    onFocus({
      atKm: km,
      gap: again ? null : { commodity, index },
      marked: [...focus.marked.slice(-1), km],
    });
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.key === 'Enter') {
      if (atKm !== null) choose(analysis.water.gaps.length > 0 && event.shiftKey ? 'water' : 'fuel', atKm);
      return;
    }
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const times = ZOOM_KEYS[event.key];
    if (times !== undefined) {
      const aboutKm = atKm ?? (onRoute.fromKm + onRoute.toKm) / 2;
      return onShown(times === 0 ? wholeRoute(lengthKm) : zoomed(onRoute, lengthKm, { times, aboutKm }));
    }
    const next = stepAlong(shown, units, { atKm, visibleKm: lengthOf(onRoute) }, event.key);
    if (next === null) return;
    event.preventDefault();
    const held = holding(onRoute, lengthKm, next);
    onFocus(held === onRoute ? { atKm: next } : { atKm: next, onShow: { ...held, by: 'strip' } });
  };

  const chosenIn = (commodity: 'fuel' | 'water') =>
    focus.gap?.commodity === commodity ? focus.gap.index : null;
  const surfaces = useMemo(() => flatSurfaces(analysis.trip.surfaces ?? []), [analysis]);
  const start = analysis.fuel.gaps[0]?.from ?? analysis.water.gaps[0]?.from;
  const withoutCover = useMemo(
    () => ({
      fuel: stretchesWithoutCover(analysis.fuel, lengthKm),
      water: stretchesWithoutCover(analysis.water, lengthKm),
    }),
    [analysis, lengthKm],
  );
  const clip = `${patterns}clip`;
  return (
    <div className="strip-frame">
      <div
        ref={box}
        className={isWhole(onRoute, lengthKm) ? 'strip' : 'strip strip-nearer'}
        role="slider"
        tabIndex={0}
        aria-label="Along the route"
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
          Arrow keys move along the route, page keys go from supply to supply. Plus and minus bring it nearer
          and farther, zero shows all of it. Enter chooses the stretch of fuel, Shift and Enter that of water.
        </p>
        <svg viewBox={`0 0 ${size.widthPx} ${size.heightPx}`} aria-hidden="true" focusable="false">
          <StripPatterns prefix={patterns} />
          <clipPath id={clip}>
            <rect
              x={0}
              y={frame.topPx - CLIP_EDGE_PX}
              width={size.widthPx}
              height={frame.bottomPx - frame.topPx + 2 * CLIP_EDGE_PX}
            />
          </clipPath>
          <StripHeads analysis={shown} units={units} frame={frame} />
          {(['fuel', 'water'] as const).map((commodity) => (
            <StripHalf
              key={commodity}
              commodity={commodity}
              report={shown[commodity]}
              passings={analysis.passings}
              units={units}
              frame={frame}
              lengthKm={lengthKm}
              selected={shown === analysis ? chosenIn(commodity) : null}
              chosen={analysis[commodity].gaps[chosenIn(commodity) ?? -1] ?? null}
              patterns={`${patterns}${commodity}-`}
              clip={clip}
            />
          ))}
          <g clipPath={`url(#${clip})`}>
            <StripRoad
              frame={frame}
              nights={analysis.nights}
              surfaces={surfaces}
              closed={analysis.trip.closed ?? NONE_CLOSED}
              withoutCover={withoutCover}
              units={units}
              patterns={patterns}
            />
          </g>
          {start !== undefined && onRoute.fromKm === 0 && (
            <text className="strip-name" x={size.widthPx / 2} y={size.heightPx - 8} textAnchor="middle">
              {edgeWords(start, analysis.passings, 'fuel')}
            </text>
          )}
          {atKm !== null && atKm >= onRoute.fromKm && atKm <= onRoute.toKm && (
            <StripReadout analysis={shown} frame={frame} units={units} atKm={atKm} />
          )}
        </svg>
      </div>
      <StripTools shown={onRoute} {...{ lengthKm, onShown }} aboutKm={atKm}>
        <StripLegend planned={shown !== analysis} />
      </StripTools>
    </div>
  );
}

/** Marks that stand on the strip's ends are not cut in half. */
const CLIP_EDGE_PX = 6;
const NONE_CLOSED: readonly Span[] = [];
/** How many times nearer a key brings the strip; 0: all of it. */
const ZOOM_KEYS: Record<string, number | undefined> = {
  '+': STEP_TIMES,
  '=': STEP_TIMES,
  '-': 1 / STEP_TIMES,
  '0': 0,
};

/** What lies on either side, and how much its full width is. */
function StripHeads(props: { analysis: StripAnalysis; units: UnitSystem; frame: StripFrame }) {
  const { analysis, units } = props;
  const { widthPx, narrow } = props.frame;
  return (
    <g className="strip-heads">
      {(['fuel', 'water'] as const).map((commodity) => {
        const left = commodity === 'fuel';
        const x = left ? 12 : widthPx - 12;
        const anchor = left ? 'start' : 'end';
        return (
          <g key={commodity} textAnchor={anchor}>
            <text className="strip-head" x={x} y={18}>
              {narrow && !left ? 'water' : commodityWords(commodity, analysis.rig.fuel.kind)}
            </text>
            <text className="strip-detail" x={x} y={34}>
              {headDetail(analysis[commodity], units, narrow)}
            </text>
          </g>
        );
      })}
      {analysis.fuel.plan !== undefined && (
        <text className="strip-detail" x={widthPx / 2} y={51} textAnchor="middle">
          by the plan
        </text>
      )}
    </g>
  );
}

/** How much the full width is: in the tanks, and in cans beyond them where a plan goes by. */
function headDetail(report: StripReport, units: UnitSystem, narrow: boolean): string {
  if (report.plan === undefined) {
    return `${narrow ? '' : 'full width '}${formatLitres(fullLitres(report), units)}`;
  }
  const cans = Math.max(0, ...report.plan.cans.map((span) => span.cans));
  const tanks = `${narrow ? '' : 'tanks '}${formatLitres(report.capacityL, units)}`;
  return cans === 0 ? tanks : `${tanks} + ${countCans(cans)}`;
}
