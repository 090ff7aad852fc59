import type { Verdict } from '../../server/contract/common.ts';
import type { StripReport } from '../levels/plan-report.ts';
import {
  DETAIL_PX,
  detailWords,
  LINE_PX,
  type StripLabel,
  TURN_BACK_INSET_PX,
  verdictWidthPx,
} from './gap-labels.ts';

interface Props {
  labels: readonly StripLabel[];
  report: StripReport;
  outerX: number;
  baseX: number;
  outward: 1 | -1;
}

/** First baseline inside a label's line. */
const BASELINE_PX = 11.5;

/** Names, lengths and verdicts along the outer edge, the turning point beside the road. */
export function StripLabels({ labels, report, outerX, baseX, outward }: Props) {
  const anchor = outward < 0 ? 'start' : 'end';
  return (
    <g className="strip-labels">
      {labels.map((label) => {
        if (label.kind === 'note') {
          return (
            <text
              key={`note ${label.topPx}`}
              className="strip-detail"
              x={outerX}
              y={label.topPx + BASELINE_PX}
              textAnchor={anchor}
            >
              {label.text}
            </text>
          );
        }
        if (label.kind === 'turn-back') {
          const towards = outward < 0 ? 'end' : 'start';
          return (
            <text
              key={`turn-back ${label.topPx}`}
              className={label.first ? 'strip-turn-text' : 'strip-detail'}
              textAnchor={towards}
            >
              {label.lines.map((line, i) => (
                <tspan
                  key={line}
                  x={baseX + outward * TURN_BACK_INSET_PX}
                  y={label.topPx + BASELINE_PX + i * (LINE_PX - 2)}
                >
                  {line}
                </tspan>
              ))}
            </text>
          );
        }
        const gap = report.gaps[label.gapIndex];
        if (gap === undefined) return null;
        const nameY = label.topPx + BASELINE_PX;
        return (
          <g key={`gap ${label.gapIndex}`} className={`strip-label strip-verdict-${gap.verdict}`}>
            {label.leaderFromPx !== null && (
              <line
                className="strip-leader"
                x1={outerX}
                x2={outerX}
                y1={label.leaderFromPx}
                y2={label.topPx + LINE_PX / 2}
              />
            )}
            <text className="strip-name" x={outerX} y={nameY} textAnchor={anchor}>
              {label.name}
              {label.name !== label.fullName && <title>{label.fullName}</title>}
            </text>
            {label.length !== null && (
              <Detail
                words={detailWords(gap.verdict, label.length, Math.abs(outerX - baseX))}
                verdict={gap.verdict}
                x={outerX}
                y={nameY + LINE_PX}
                outward={outward}
              />
            )}
          </g>
        );
      })}
    </g>
  );
}

/** "384 km" with the verdict's word in the same dress as in the tables. */
function Detail(props: {
  words: { verdict: string; length: string | null };
  verdict: Verdict;
  x: number;
  y: number;
  outward: 1 | -1;
}) {
  const { words, verdict, x, y, outward } = props;
  const anchor = outward < 0 ? 'start' : 'end';
  if (verdict === 'enough') {
    return (
      <text className="strip-detail" x={x} y={y} textAnchor={anchor}>
        {[words.length, words.verdict].filter((word) => word).join(', ')}
      </text>
    );
  }
  const widthPx = verdictWidthPx(words.verdict);
  const left = outward < 0 ? x : x - widthPx;
  return (
    <>
      <rect
        className="strip-verdict-ground"
        x={left}
        y={y - DETAIL_PX}
        width={widthPx}
        height={LINE_PX}
        rx={2}
      />
      {verdict === 'into-reserve' && (
        <line className="strip-verdict-line" x1={left} x2={left + widthPx} y1={y + 3} y2={y + 3} />
      )}
      <text className="strip-verdict" x={left + widthPx / 2} y={y} textAnchor="middle">
        {words.verdict}
      </text>
      {words.length !== null && (
        <text className="strip-detail" x={x - outward * (widthPx + 4)} y={y} textAnchor={anchor}>
          {words.length}
        </text>
      )}
    </>
  );
}
