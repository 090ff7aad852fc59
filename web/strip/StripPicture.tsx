import { useMemo } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Span } from '../../server/contract/common.ts';
import { t } from '../language/t.ts';
import { fullLitres, stretchesWithoutCover } from '../levels/levels.ts';
import type { StripAnalysis, StripReport } from '../levels/plan-report.ts';
import { StripPatterns } from '../marks/StripPatterns.tsx';
import { flatSurfaces } from '../state/edit-trip.ts';
import type { Focus } from '../state/focus.ts';
import { formatLitres, type UnitSystem } from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { commodityWords } from '../words/words.ts';
import { edgeWords } from './labels/words.ts';
import { StripHalf } from './StripHalf.tsx';
import { StripReadout } from './StripReadout.tsx';
import { StripRoad } from './StripRoad.tsx';
import type { StripFrame } from './strip-frame.ts';

interface Props {
  analysis: Analysis;
  /** The analysis, by a plan where one is gone by. */
  shown: StripAnalysis;
  units: UnitSystem;
  frame: StripFrame;
  /** The place pointed at. */
  atKm: number | null;
  /** The chosen gap. */
  gap: Focus['gap'];
  /** Prefix of this strip's pattern ids. */
  patterns: string;
}

/** All that is drawn of the strip. */
export function StripPicture({ analysis, shown, units, frame, atKm, gap, patterns }: Props) {
  const { lengthKm } = analysis.route;
  const { fromKm, toKm } = frame.shown;
  const chosenIn = (commodity: 'fuel' | 'water') => (gap?.commodity === commodity ? gap.index : null);
  const start = analysis.fuel.gaps[0]?.from ?? analysis.water.gaps[0]?.from;
  const clip = `${patterns}clip`;
  return (
    <svg viewBox={`0 0 ${frame.widthPx} ${frame.heightPx}`} aria-hidden="true" focusable="false">
      <StripPatterns prefix={patterns} />
      <Clip id={clip} frame={frame} />
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
        <Road {...{ analysis, frame, units, patterns }} />
      </g>
      {start !== undefined && fromKm === 0 && (
        <text className="strip-name" x={frame.widthPx / 2} y={frame.heightPx - 8} textAnchor="middle">
          {edgeWords(start, analysis.passings, 'fuel')}
        </text>
      )}
      {atKm !== null && atKm >= fromKm && atKm <= toKm && (
        <StripReadout analysis={shown} frame={frame} units={units} atKm={atKm} />
      )}
    </svg>
  );
}

/** Marks that stand on the strip's ends are not cut in half. */
const CLIP_EDGE_PX = 6;
const NONE_CLOSED: readonly Span[] = [];
/** What the strip's two ends leave to be seen. */
function Clip({ id, frame }: { id: string; frame: StripFrame }) {
  const heightPx = frame.bottomPx - frame.topPx + 2 * CLIP_EDGE_PX;
  return (
    <clipPath id={id}>
      <rect x={0} y={frame.topPx - CLIP_EDGE_PX} width={frame.widthPx} height={heightPx} />
    </clipPath>
  );
}

/** The road, with what is told of it. */
function Road({
  analysis,
  frame,
  units,
  patterns,
}: Pick<Props, 'analysis' | 'frame' | 'units' | 'patterns'>) {
  const { lengthKm } = analysis.route;
  const surfaces = useMemo(() => flatSurfaces(analysis.trip.surfaces ?? []), [analysis]);
  const withoutCover = useMemo(
    () => ({
      fuel: stretchesWithoutCover(analysis.fuel, lengthKm),
      water: stretchesWithoutCover(analysis.water, lengthKm),
    }),
    [analysis, lengthKm],
  );
  return (
    <StripRoad
      {...{ frame, surfaces, withoutCover, units, patterns }}
      nights={analysis.nights}
      closed={analysis.trip.closed ?? NONE_CLOSED}
    />
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
              {narrow && !left ? t('water') : commodityWords(commodity, analysis.rig.fuel.kind)}
            </text>
            <text className="strip-detail" x={x} y={34}>
              {headDetail(analysis[commodity], units, narrow)}
            </text>
          </g>
        );
      })}
      {analysis.fuel.plan !== undefined && (
        <text className="strip-detail" x={widthPx / 2} y={51} textAnchor="middle">
          {t('by the plan')}
        </text>
      )}
    </g>
  );
}

/** How much the full width is: in the tanks, and in cans beyond them where a plan goes by. */
function headDetail(report: StripReport, units: UnitSystem, narrow: boolean): string {
  if (report.plan === undefined) {
    return narrow
      ? formatLitres(fullLitres(report), units)
      : t`full width ${formatLitres(fullLitres(report), units)}`;
  }
  const cans = Math.max(0, ...report.plan.cans.map((span) => span.cans));
  const litres = formatLitres(report.capacityL, units);
  const tanks = narrow ? litres : t`tanks ${litres}`;
  return cans === 0 ? tanks : `${tanks} + ${countCans(cans)}`;
}
