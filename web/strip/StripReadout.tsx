import { textWidthPx } from '../kit/text-width.ts';
import { levelAt } from '../levels/levels.ts';
import type { StripAnalysis } from '../levels/plan-report.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { levelWords } from './labels/words.ts';
import type { StripFrame } from './strip-frame.ts';

interface Props {
  analysis: StripAnalysis;
  frame: StripFrame;
  units: UnitSystem;
  atKm: number;
}

const FIGURE_PX = 13;
const NOTE_PX = 11;
const CHIP_PX = 20;
const NOTE_LINE_PX = 13;

/** A line across the strip at the place pointed at, with what is aboard there on either side. */
export function StripReadout({ analysis, frame, units, atKm }: Props) {
  const y = frame.yOfKm(atKm);
  const middle = (frame.roadLeftPx + frame.roadRightPx) / 2;
  const place = formatAtKm(atKm, units);
  const placeWidth = Math.max(frame.roadRightPx - frame.roadLeftPx, textWidthPx(place, FIGURE_PX) + 8);
  return (
    <g className="strip-readout">
      <line x1={0} x2={frame.widthPx} y1={y} y2={y} />
      <rect
        className="strip-here"
        x={middle - placeWidth / 2}
        y={y - CHIP_PX / 2}
        width={placeWidth}
        height={CHIP_PX}
        rx={2}
      />
      <text className="strip-here-text" x={middle} y={y + 4.6} textAnchor="middle">
        {place}
      </text>
      {(['fuel', 'water'] as const).map((commodity) => {
        const level = levelAt(analysis[commodity], atKm);
        if (level === null) return null;
        const { litres, notes } = levelWords(level, units, frame.narrow);
        const outer = commodity === 'fuel' ? 2 : frame.widthPx - 2;
        const notesPx = notes.map((note) => textWidthPx(note, NOTE_PX));
        const widthPx = Math.max(textWidthPx(litres, FIGURE_PX), ...notesPx) + 12;
        const heightPx = CHIP_PX + notes.length * NOTE_LINE_PX;
        const left = commodity === 'fuel' ? outer : outer - widthPx;
        return (
          <g key={commodity}>
            <rect
              className={`strip-chip strip-chip-${commodity}`}
              x={left}
              y={y - CHIP_PX / 2}
              width={widthPx}
              height={heightPx}
              rx={2}
            />
            <text className="strip-chip-litres" x={left + widthPx / 2} y={y + 4.6} textAnchor="middle">
              {litres}
            </text>
            {notes.map((note, i) => (
              <text
                key={note}
                className="strip-chip-note"
                x={left + widthPx / 2}
                y={y + 18 + i * NOTE_LINE_PX}
                textAnchor="middle"
              >
                {note}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}
