import type { Report } from '../../server/contract/analysis.ts';
import { DETAIL_PX, LINE_PX, type StripLabel, verdictWidthPx } from './gap-labels.ts';
import { VERDICT_WORDS } from './words.ts';

interface Props {
  labels: readonly StripLabel[];
  report: Report;
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
        if (label.kind === 'no-data') {
          return (
            <text
              key={`no-data ${label.topPx}`}
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
            <text key="turn-back" className="strip-turn-text" textAnchor={towards}>
              {label.lines.map((line, i) => (
                <tspan key={line} x={baseX + outward * 14} y={label.topPx + BASELINE_PX + i * (LINE_PX - 2)}>
                  {line}
                </tspan>
              ))}
            </text>
          );
        }
        const gap = report.gaps[label.gapIndex]!;
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
                words={VERDICT_WORDS[gap.verdict]}
                verdict={gap.verdict}
                length={label.length}
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
  words: string;
  verdict: string;
  length: string;
  x: number;
  y: number;
  outward: 1 | -1;
}) {
  const { words, verdict, x, y, outward } = props;
  const anchor = outward < 0 ? 'start' : 'end';
  const widthPx = verdictWidthPx(words);
  const left = outward < 0 ? x : x - widthPx;
  const plain = verdict === 'enough';
  return (
    <>
      {!plain && (
        <rect
          className="strip-verdict-ground"
          x={left}
          y={y - DETAIL_PX}
          width={widthPx}
          height={LINE_PX}
          rx={2}
        />
      )}
      {verdict === 'into-reserve' && (
        <line className="strip-verdict-line" x1={left} x2={left + widthPx} y1={y + 3} y2={y + 3} />
      )}
      {!plain && (
        <text className="strip-verdict" x={left + widthPx / 2} y={y} textAnchor="middle">
          {words}
        </text>
      )}
      <text className="strip-detail" x={plain ? x : x - outward * (widthPx + 4)} y={y} textAnchor={anchor}>
        {plain ? `${props.length}, ${words}` : props.length}
      </text>
    </>
  );
}
