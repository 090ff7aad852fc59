import { type KeyboardEvent, type PointerEvent, useId, useMemo } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { useSize } from '../kit/hooks/use-size.ts';
import { fullLitres, gapIndexAt, stretchesWithoutCover } from '../levels/levels.ts';
import { type StripAnalysis, type StripReport, withPlan } from '../levels/plan-report.ts';
import { StripPatterns } from '../marks/StripPatterns.tsx';
import { flatSurfaces } from '../state/edit-trip.ts';
import type { Focus } from '../state/focus.ts';
import { formatLitres, type UnitSystem } from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { StripHalf } from './StripHalf.tsx';
import { StripReadout } from './StripReadout.tsx';
import { StripRoad } from './StripRoad.tsx';
import { stepAlong } from './step-along.ts';
import { type StripFrame, stripFrame } from './strip-frame.ts';
import { edgeWords, placeInWords } from './words.ts';
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
  const id = useId();
  const patterns = `${id.replace(/[^\w-]/g, '')}-`;
  const frame = useMemo(() => stripFrame(shown, size), [shown, size]);
  const atKm = focus.atKm === null ? null : Math.min(Math.max(focus.atKm, 0), lengthKm);

  const placeOf = (event: PointerEvent<HTMLDivElement>) => {
    const bounds = event.currentTarget.getBoundingClientRect();
    const y = ((event.clientY - bounds.top) * size.heightPx) / bounds.height;
    const onLeft = event.clientX - bounds.left < bounds.width / 2;
    return { km: frame.kmOfY(y), commodity: onLeft ? ('fuel' as const) : ('water' as const) };
  };
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
    const next = stepAlong(shown, units, atKm, event.key);
    if (next === null || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onFocus({ atKm: next });
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
  return (
    <div
      ref={box}
      className="strip"
      role="slider"
      tabIndex={0}
      aria-label="Along the route"
      aria-describedby={`${id}keys`}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={Math.round(lengthKm)}
      aria-valuenow={Math.round(atKm ?? 0)}
      aria-valuetext={placeInWords(shown, atKm ?? 0, units)}
      onPointerMove={(event) => onFocus({ atKm: placeOf(event).km })}
      onPointerLeave={(event) => event.pointerType === 'mouse' && onFocus({ atKm: null })}
      onClick={(event) => {
        const { km, commodity } = placeOf(event as PointerEvent<HTMLDivElement>);
        choose(commodity, km);
      }}
      onKeyDown={onKeyDown}
    >
      <p id={`${id}keys`} hidden>
        Arrow keys move along the route, page keys go from supply to supply. Enter chooses the stretch of
        fuel, Shift and Enter that of water.
      </p>
      <svg viewBox={`0 0 ${size.widthPx} ${size.heightPx}`} aria-hidden="true" focusable="false">
        <StripPatterns prefix={patterns} />
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
          />
        ))}
        <StripRoad
          frame={frame}
          lengthKm={lengthKm}
          nights={analysis.nights}
          surfaces={surfaces}
          withoutCover={withoutCover}
          units={units}
          patterns={patterns}
        />
        {start !== undefined && (
          <text className="strip-name" x={size.widthPx / 2} y={size.heightPx - 8} textAnchor="middle">
            {edgeWords(start, analysis.passings, 'fuel')}
          </text>
        )}
        {atKm !== null && <StripReadout analysis={shown} frame={frame} units={units} atKm={atKm} />}
      </svg>
    </div>
  );
}

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
          by the plan: bands full cans, dots pour one
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
