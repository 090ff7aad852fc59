import { memo } from 'react';
import type { Passing } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { stretchesWithoutCover } from '../levels/levels.ts';
import type { StripGap, StripReport } from '../levels/plan-report.ts';
import type { UnitSystem } from '../units/units.ts';
import { gapAreas, type HalfScale } from './area-path.ts';
import { halfLabels, turnBackGap } from './gap-labels.ts';
import { StripLabels } from './StripLabels.tsx';
import { CanBar, PlanArea, PlanStops } from './StripPlan.tsx';
import type { StripFrame } from './strip-frame.ts';

interface Props {
  commodity: Commodity;
  report: StripReport;
  passings: readonly Passing[];
  units: UnitSystem;
  frame: StripFrame;
  lengthKm: number;
  /** Index of the stretch whose labels come first. */
  selected: number | null;
  /** The chosen gap, framed. */
  chosen: StripGap | null;
  /** Prefix of this strip's pattern ids. */
  patterns: string;
}

/** Where fills come closer than this, on average, only the lines of named ones are drawn, and small marks left out. */
const CROWDED_PX = 6;

/** One commodity beside the road: what is aboard as width, the fills as lines, names, verdicts, turning point. */
export const StripHalf = memo(function StripHalf(props: Props) {
  const { commodity, report, frame, patterns, chosen } = props;
  const { plan } = report;
  const scale: HalfScale = frame[commodity];
  const outward = commodity === 'fuel' ? -1 : 1;
  const outerX = scale.baseX + outward * frame.halfWidthPx;
  const left = Math.min(scale.baseX, outerX);
  const crowded = (frame.bottomPx - frame.topPx) / Math.max(1, report.gaps.length) < CROWDED_PX;
  const fullAcross = (fromKm: number, toKm: number) => ({
    x: left,
    width: frame.halfWidthPx,
    y: frame.yOfKm(toKm),
    height: Math.max(0, frame.yOfKm(fromKm) - frame.yOfKm(toKm)),
  });
  const labels = halfLabels({
    report,
    passings: props.passings,
    commodity,
    units: props.units,
    selected: props.selected,
    lengthKm: props.lengthKm,
    halfWidthPx: frame.halfWidthPx,
    topPx: frame.topPx,
    bottomPx: frame.bottomPx,
    yOfKm: frame.yOfKm,
  });

  return (
    <g className={`strip-half strip-${commodity}`}>
      {plan === undefined ? (
        report.gaps.map((gap) => (
          <GapArea key={keyOf(gap)} gap={gap} scale={scale} patterns={patterns} fullAcross={fullAcross} />
        ))
      ) : (
        <PlanArea {...{ plan, scale, frame }} capacityL={report.capacityL} />
      )}
      {stretchesWithoutCover(report, props.lengthKm).map((span) => (
        <g key={span.fromKm} className="strip-no-cover">
          <rect className="strip-veil" {...fullAcross(span.fromKm, span.toKm)} />
          <rect fill={`url(#${patterns}dots)`} {...fullAcross(span.fromKm, span.toKm)} />
        </g>
      ))}
      {!crowded &&
        report.gaps.map((gap) => {
          const x = scale.baseX + gap.reserveL * scale.pxPerLitre;
          const y1 = frame.yOfKm(gap.from.atKm);
          return (
            <line
              key={keyOf(gap)}
              className="strip-reserve-level"
              x1={x}
              x2={x}
              y1={y1}
              y2={frame.yOfKm(gap.to.atKm)}
            />
          );
        })}
      {report.gaps.map((gap, i) => {
        const y = frame.yOfKm(gap.to.atKm);
        const named = labels.some((label) => label.kind === 'gap' && label.gapIndex === i);
        if (crowded && !named && i < report.gaps.length - 1) return null;
        const className = crowded ? 'strip-fill strip-crowded' : 'strip-fill';
        return <line key={keyOf(gap)} className={className} x1={scale.baseX} x2={outerX} y1={y} y2={y} />;
      })}
      <line className="strip-fill" x1={scale.baseX} x2={outerX} y1={frame.bottomPx} y2={frame.bottomPx} />
      <UncountedMarks {...props} />
      {plan !== undefined && (
        <>
          <PlanStops {...{ stops: plan.stops, commodity, frame, crowded }} />
          <CanBar {...{ plan, frame }} outerX={outerX + outward * 6} />
        </>
      )}
      {chosen !== null && <rect className="strip-chosen" {...fullAcross(chosen.from.atKm, chosen.to.atKm)} />}
      <TurnBackMarks
        report={report}
        frame={frame}
        scale={scale}
        named={turnBackGap(report, props.selected)}
        crowded={crowded}
      />
      <StripLabels labels={labels} report={report} outerX={outerX} baseX={scale.baseX} outward={outward} />
    </g>
  );
});

const keyOf = (gap: StripGap): string => `${gap.from.atKm} ${gap.from.id} ${gap.to.id}`;

function GapArea(props: {
  gap: StripGap;
  scale: HalfScale;
  patterns: string;
  fullAcross(fromKm: number, toKm: number): { x: number; width: number; y: number; height: number };
}) {
  const { left, reserve, dry } = gapAreas(props.gap, props.scale);
  return (
    <>
      {left !== null && <path className="strip-left" d={left} />}
      {reserve !== null && (
        <path className="strip-into-reserve" d={reserve} fill={`url(#${props.patterns}stripes)`} />
      )}
      {dry !== null && (
        <rect
          fill={`url(#${props.patterns}hatch)`}
          className="strip-dry"
          {...props.fullAcross(dry.fromKm, dry.toKm)}
        />
      )}
    </>
  );
}

/** Points that do not count, hollow at the road's edge: fuel square, water round. */
function UncountedMarks({ commodity, passings, frame }: Props) {
  const marks = passings.filter((passing) => passing.commodity === commodity && !passing.counts);
  const crowded = (frame.bottomPx - frame.topPx) / Math.max(1, marks.length) < CROWDED_PX;
  const x = frame[commodity].baseX + (commodity === 'fuel' ? -5 : 5);
  return (
    <g className="strip-uncounted">
      {marks.map((mark) => {
        const y = frame.yOfKm(mark.atKm);
        const key = `${mark.id} ${mark.atKm}`;
        if (crowded) return <line key={key} x1={x - 3} x2={x + 3} y1={y} y2={y} />;
        if (commodity === 'water') return <circle key={key} cx={x} cy={y} r={3.2} />;
        return <rect key={key} x={x - 3} y={y - 3} width={6} height={6} />;
      })}
    </g>
  );
}

/** Arrowheads towards the start where a stretch can last be turned back in: hollow where the other's was passed before. */
function TurnBackMarks(props: {
  report: StripReport;
  frame: StripFrame;
  scale: HalfScale;
  named: number | null;
  crowded: boolean;
}) {
  const { frame, scale } = props;
  const outward = scale.pxPerLitre < 0 ? -1 : 1;
  const ofGaps = () =>
    props.report.gaps.flatMap(({ turnBackKm: atKm, to, verdict }, i) => {
      const needed = i === props.named || (!props.crowded && verdict !== 'enough');
      return !needed || atKm === null || atKm >= to.atKm ? [] : [{ atKm, first: true }];
    });
  return (
    <g className="strip-turn-back">
      {(props.report.plan?.turnBacks ?? ofGaps()).map(({ atKm, first }) => {
        const y = frame.yOfKm(atKm);
        const x = scale.baseX;
        const tip = `${x + outward * 5},${y + 5} ${x},${y - 4} ${x + outward * 10},${y - 4}`;
        return <polygon key={atKm} className={first ? undefined : 'strip-later'} points={tip} />;
      })}
    </g>
  );
}
