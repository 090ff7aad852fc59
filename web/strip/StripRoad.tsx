import { memo } from 'react';
import type { Night } from '../../server/contract/analysis.ts';
import type { Commodity, Span } from '../../server/contract/common.ts';
import type { SurfaceEntry } from '../../server/contract/surface.ts';
import { BAND_PX, SurfaceLine } from '../marks/SurfacePattern.tsx';
import { figureAtKm, type UnitSystem } from '../units/units.ts';
import { rulerMarks } from './ruler.ts';
import type { StripFrame } from './strip-frame.ts';

interface Props {
  frame: StripFrame;
  nights: readonly Night[];
  /** Stretches whose surface is told, none over another. */
  surfaces: readonly SurfaceEntry[];
  /** Stretches on which nobody may drive. */
  closed: readonly Span[];
  /** Stretches that no extract covers: the road is dotted on that commodity's side. */
  withoutCover: Record<Commodity, readonly Span[]>;
  units: UnitSystem;
  patterns: string;
}

const FIGURE_SPACING_PX = 34;
/** Figures keep clear of the road's ends, nights of each other. */
const END_PX = 7;
const NIGHTS_APART_PX = 8;

/** The road itself: round figures up it, nights beside it, surfaces as lines along its sides, no map data dotted, closed striped. */
export const StripRoad = memo(function StripRoad(props: Props) {
  const { frame, nights, surfaces, closed, withoutCover, units, patterns } = props;
  const width = frame.roadRightPx - frame.roadLeftPx;
  const middle = (frame.roadLeftPx + frame.roadRightPx) / 2;
  const marks = rulerMarks(frame.shown, frame.bottomPx - frame.topPx, FIGURE_SPACING_PX, units);
  const isClear = (y: number) => y > frame.topPx + END_PX && y < frame.bottomPx - END_PX;
  const nightHeights = nights
    .filter(({ atKm }) => atKm >= frame.shown.fromKm && atKm <= frame.shown.toKm)
    .map(({ atKm }) => frame.yOfKm(atKm));
  const nightsDrawn = nightHeights.filter(
    (y, i) => Math.abs(y - (nightHeights[i - 1] ?? Number.POSITIVE_INFINITY)) >= NIGHTS_APART_PX,
  );
  const along = ({ fromKm, toKm }: Span) => ({
    y: frame.yOfKm(toKm),
    height: Math.max(0, frame.yOfKm(fromKm) - frame.yOfKm(toKm)),
  });
  return (
    <g className="strip-road">
      <rect
        className="strip-road-bed"
        x={frame.roadLeftPx}
        y={frame.topPx}
        width={width}
        height={frame.bottomPx - frame.topPx}
      />
      {(['fuel', 'water'] as const).map((commodity) =>
        withoutCover[commodity].map((span) => (
          <rect
            key={`${commodity} ${span.fromKm}`}
            fill={`url(#${patterns}road-dots)`}
            x={commodity === 'fuel' ? frame.roadLeftPx : middle}
            width={width / 2}
            {...along(span)}
          />
        )),
      )}
      {closed.map((span) => (
        <rect
          key={`closed ${span.fromKm}`}
          className="strip-closed"
          fill={`url(#${patterns}closed)`}
          x={frame.roadLeftPx - 3}
          width={width + 6}
          {...along(span)}
        />
      ))}
      {surfaces.map((entry) =>
        [frame.roadLeftPx + BAND_PX, frame.roadRightPx - BAND_PX].map((x) => (
          <SurfaceLine
            key={`${entry.fromKm} ${x}`}
            surface={entry.surface}
            x={x}
            y1={frame.yOfKm(entry.fromKm)}
            y2={frame.yOfKm(entry.toKm)}
          />
        )),
      )}
      {marks.map((mark) => {
        const y = frame.yOfKm(mark.atKm);
        return (
          <g key={mark.figure}>
            <line className="strip-tick" x1={frame.roadLeftPx} x2={frame.roadLeftPx + 4} y1={y} y2={y} />
            <line className="strip-tick" x1={frame.roadRightPx - 4} x2={frame.roadRightPx} y1={y} y2={y} />
            {isClear(y) && (
              <text className="strip-figure" x={middle} y={y + 3.7} textAnchor="middle">
                {figureAtKm(mark.atKm, units)}
              </text>
            )}
          </g>
        );
      })}
      {nightsDrawn.map((y) => (
        <path key={y} className="strip-night" d={moon(frame.nightX, y, 4.5)} />
      ))}
    </g>
  );
});

/** A crescent: the greater part of a circle, closed by an arc that bends into it. */
const moon = (x: number, y: number, r: number): string => {
  const hornX = x + r * 0.5;
  const hornY = r * 0.87;
  return `M${hornX},${y - hornY} A${r},${r} 0 1 0 ${hornX},${y + hornY} A${r * 0.95},${r * 0.95} 0 0 1 ${hornX},${y - hornY} Z`;
};
