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
  lengthKm: number;
  nights: readonly Night[];
  /** Stretches whose surface is told, none over another. */
  surfaces: readonly SurfaceEntry[];
  /** Stretches that no extract covers: the road is dotted on that commodity's side. */
  withoutCover: Record<Commodity, readonly Span[]>;
  units: UnitSystem;
  patterns: string;
}

const FIGURE_SPACING_PX = 34;
/** A figure and a night's mark share the road only this far apart. */
const APART_PX = 11;

/** The road itself: round figures up it, nights as moons, surfaces as lines along its sides, stretches without cover dotted. */
export const StripRoad = memo(function StripRoad({
  frame,
  lengthKm,
  nights,
  surfaces,
  withoutCover,
  units,
  patterns,
}: Props) {
  const width = frame.roadRightPx - frame.roadLeftPx;
  const middle = (frame.roadLeftPx + frame.roadRightPx) / 2;
  const nightHeights = nights.map((night) => frame.yOfKm(night.atKm));
  const marks = rulerMarks(lengthKm, frame.bottomPx - frame.topPx, FIGURE_SPACING_PX, units);
  const clear = (y: number) =>
    y > frame.topPx + 6 &&
    y < frame.bottomPx - 6 &&
    nightHeights.every((night) => Math.abs(night - y) >= APART_PX);
  const nightsShown = nightHeights.filter(
    (y, i) => Math.abs(y - (nightHeights[i - 1] ?? Number.POSITIVE_INFINITY)) >= 8,
  );
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
            y={frame.yOfKm(span.toKm)}
            height={frame.yOfKm(span.fromKm) - frame.yOfKm(span.toKm)}
          />
        )),
      )}
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
            {clear(y) && (
              <text className="strip-figure" x={middle} y={y + 3.7} textAnchor="middle">
                {figureAtKm(mark.atKm, units)}
              </text>
            )}
          </g>
        );
      })}
      {nightsShown.map((y) => (
        <path key={y} className="strip-night" d={moon(middle, y, 4.5)} />
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
