import type { Verdict } from '../../../server/contract/common.ts';
import type { StripReport } from '../../levels/plan-report.ts';
import { VERDICT_WORDS } from '../../words/words.ts';
import { DETAIL_PX, LINE_PX, type StripLabel, verdictWidthPx, verdictWords } from './gap-labels.ts';

interface Props {
  labels: readonly StripLabel[];
  report: StripReport;
  /** The bars' outer edge, and where the labels begin beyond it. */
  barX: number;
  labelX: number;
  labelPx: number;
  outward: 1 | -1;
}

/** First baseline inside a label's line. */
const BASELINE_PX = 11.5;
/** Between a label and the end of the line that leads to it. */
const LEADER_END_PX = 3;

/** Names, lengths, verdicts and turn-back points in a column beside the bars, each with a line to its place. */
export function StripLabels({ labels, report, barX, labelX, labelPx, outward }: Props) {
  return (
    <g className="strip-labels" textAnchor={outward < 0 ? 'end' : 'start'}>
      {labels.map((label) => (
        <g key={keyOf(label)} className={classOf(label, report)}>
          {label.kind !== 'note' && (
            <polyline
              className="strip-leader"
              points={`${barX},${label.atPx} ${barX + outward * 3},${label.atPx} ${labelX - outward * LEADER_END_PX},${label.topPx + LINE_PX / 2}`}
            />
          )}
          <Words label={label} report={report} x={labelX} outward={outward} labelPx={labelPx} />
        </g>
      ))}
    </g>
  );
}

const keyOf = (label: StripLabel): string =>
  label.kind === 'gap' ? `gap ${label.gapIndex}` : `${label.kind} ${label.atPx} ${label.topPx}`;

const classOf = (label: StripLabel, report: StripReport): string =>
  label.kind === 'gap' ? `strip-label strip-verdict-${report.gaps[label.gapIndex]?.verdict}` : 'strip-label';

interface WordsProps {
  label: StripLabel;
  report: StripReport;
  x: number;
  labelPx: number;
  outward: 1 | -1;
}

function Words({ label, report, x, outward, labelPx }: WordsProps) {
  const y = label.topPx + BASELINE_PX;
  if (label.kind === 'note') {
    return (
      <text className="strip-detail" x={x} y={y}>
        {label.text}
      </text>
    );
  }
  if (label.kind === 'turn-back') {
    return (
      <Lines className={label.first ? 'strip-turn-text' : 'strip-detail'} lines={label.lines} x={x} y={y} />
    );
  }
  const gap = report.gaps[label.gapIndex];
  if (gap === undefined) return null;
  const below = y + label.nameLines.length * LINE_PX;
  return (
    <>
      <Lines className="strip-name" lines={label.nameLines} x={x} y={y} title={label.name} />
      {label.length !== null && gap.verdict !== 'enough' && (
        <VerdictWord
          verdict={gap.verdict}
          words={verdictWords(gap.verdict, labelPx)}
          {...{ x, outward }}
          y={below}
        />
      )}
      {label.length !== null && (
        <text className="strip-detail" x={x} y={gap.verdict === 'enough' ? below : below + LINE_PX}>
          {label.length}
        </text>
      )}
    </>
  );
}

function Lines(props: { className: string; lines: readonly string[]; x: number; y: number; title?: string }) {
  const { className, lines, x, y, title } = props;
  return (
    <text className={className}>
      {title !== undefined && title !== lines.join(' ') && <title>{title}</title>}
      {lines.map((line, i) => (
        <tspan key={line} x={x} y={y + i * (LINE_PX - 1)}>
          {i < lines.length - 1 ? `${line} ` : line}
        </tspan>
      ))}
    </text>
  );
}

/** The verdict's word in the same dress as in the tables. */
function VerdictWord(props: { verdict: Verdict; words: string; x: number; y: number; outward: 1 | -1 }) {
  const { verdict, words, x, y, outward } = props;
  const widthPx = verdictWidthPx(words);
  const left = outward < 0 ? x - widthPx : x;
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
        {words !== VERDICT_WORDS[verdict] && <title>{VERDICT_WORDS[verdict]}</title>}
        {words}
      </text>
    </>
  );
}
