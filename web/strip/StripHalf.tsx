import { memo } from 'react';
import type { Passing } from '../../server/contract/analysis.ts';
import type { Commodity, Span } from '../../server/contract/common.ts';
import { stretchesWithoutCover } from '../levels/levels.ts';
import type { StripGap, StripReport } from '../levels/plan-report.ts';
import type { UnitSystem } from '../units/units.ts';
import { gapAreas, type HalfScale } from './area-path.ts';
import { halfLabels, turnBackGap } from './labels/gap-labels.ts';
import { StripLabels } from './labels/StripLabels.tsx';
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
  /** Of what is cut off where the strip ends. */
  clip: string;
}

/** Where fills come closer than this, on average, only the lines of named ones are drawn, and small marks faint. */
const CROWDED_PX = 6;

const outwardOf = (commodity: Commodity): 1 | -1 => (commodity === 'fuel' ? -1 : 1);

/** One commodity beside the road: what is aboard as width, the fills as lines; beyond the bars names, verdicts, turning points. */
export const StripHalf = memo(function StripHalf(props: Props) {
  const { commodity, report, frame } = props;
  const outward = outwardOf(commodity);
  const { baseX } = frame[commodity];
  const barX = baseX + outward * frame.barPx;
  const labels = halfLabels({
    report,
    passings: props.passings,
    commodity,
    units: props.units,
    selected: props.selected,
    lengthKm: props.lengthKm,
    shown: frame.shown,
    labelPx: frame.labelPx,
    topPx: frame.topPx,
    bottomPx: frame.bottomPx,
    yOfKm: frame.yOfKm,
  });
  const named = new Set(labels.flatMap((label) => (label.kind === 'gap' ? [label.gapIndex] : [])));
  return (
    <g className={`strip-half strip-${commodity}`}>
      <g clipPath={`url(#${props.clip})`}>
        <Bars {...props} named={named} />
      </g>
      <StripLabels
        {...{ labels, report, barX, outward }}
        labelX={barX + outward * frame.labelGapPx}
        labelPx={frame.labelPx}
      />
    </g>
  );
});

/** Whatever of a stretch is on the strip. */
const isOn = (shown: Span, fromKm: number, toKm: number): boolean =>
  toKm >= shown.fromKm && fromKm <= shown.toKm;

function Bars(props: Props & { named: ReadonlySet<number> }) {
  const { commodity, report, frame, patterns, chosen, named } = props;
  const { plan } = report;
  const scale: HalfScale = frame[commodity];
  const outward = outwardOf(commodity);
  const barX = scale.baseX + outward * frame.barPx;
  const visible = [...report.gaps.entries()].filter(([, { from, to }]) =>
    isOn(frame.shown, from.atKm, to.atKm),
  );
  const gaps = visible.map(([, gap]) => gap);
  const crowded = (frame.bottomPx - frame.topPx) / Math.max(1, gaps.length) < CROWDED_PX;
  const fullAcross = (fromKm: number, toKm: number) => ({
    x: Math.min(scale.baseX, barX),
    width: frame.barPx,
    y: frame.yOfKm(toKm),
    height: Math.max(0, frame.yOfKm(fromKm) - frame.yOfKm(toKm)),
  });
  return (
    <>
      {plan === undefined ? (
        gaps.map((gap) => (
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
      <path className="strip-reserve-level" d={reservePath(gaps, scale)} />
      {visible.map(([i, gap]) => {
        const y = frame.yOfKm(gap.to.atKm);
        if (crowded && !named.has(i) && i < report.gaps.length - 1) return null;
        const className = crowded ? 'strip-fill strip-crowded' : 'strip-fill';
        return <line key={keyOf(gap)} className={className} x1={scale.baseX} x2={barX} y1={y} y2={y} />;
      })}
      <UncountedMarks {...props} />
      {plan !== undefined && (
        <>
          <PlanStops stops={plan.stops} commodity={commodity} frame={frame} />
          <CanBar {...{ plan, frame }} outerX={barX + outward * CAN_BAR_PX} />
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
    </>
  );
}

/** From the bars to the middle of the bar of cans. */
const CAN_BAR_PX = 6;

const keyOf = (gap: StripGap): string => `${gap.from.atKm} ${gap.from.id} ${gap.to.id}`;

/** The reserve as one line that steps from gap to gap: a floor that is not to be gone below. */
function reservePath(gaps: readonly StripGap[], { baseX, pxPerLitre, yOfKm }: HalfScale): string {
  return gaps
    .map(({ reserveL, from, to }, i) => {
      const x = Math.round((baseX + reserveL * pxPerLitre) * 10) / 10;
      return `${i === 0 ? 'M' : 'L'}${x},${yOfKm(from.atKm)}V${yOfKm(to.atKm)}`;
    })
    .join('');
}

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

/** Points that do not count, hollow at the road's edge: fuel square, water round; of a crowd only faint ticks. */
function UncountedMarks({ commodity, passings, frame }: Props) {
  const marks = passings.filter(
    (passing) =>
      passing.commodity === commodity && !passing.counts && isOn(frame.shown, passing.atKm, passing.atKm),
  );
  const crowded = (frame.bottomPx - frame.topPx) / Math.max(1, marks.length) < CROWDED_PX;
  const x = frame[commodity].baseX + outwardOf(commodity) * 5;
  return (
    <g className={crowded ? 'strip-uncounted strip-faint' : 'strip-uncounted'}>
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
