import type { AxleLoad } from '../../server/contract/vehicle.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatMass, type UnitSystem } from '../units/units.ts';

const TALL_PX = 60;
const WIDE_PX = 18;

interface AxleBarProps {
  load: AxleLoad | null;
  /** Middle of the bar, and where it hangs from. */
  x: number;
  top: number;
  fullScaleKg: number;
  units: UnitSystem;
  words: 'left' | 'right';
}

/** An axle's load as a bar that hangs from it, its limit as a line across; what is over the limit is hatched. */
export function AxleBar({ load, x, top, fullScaleKg, units, words }: AxleBarProps) {
  const side = words === 'right' ? 1 : -1;
  const wordsAt = {
    x: x + side * (WIDE_PX / 2 + 8),
    textAnchor: words === 'right' ? 'start' : 'end',
  } as const;
  if (load === null) {
    return (
      <text className="axle-words" {...wordsAt} y={top + 12}>
        {t('not known')}
      </text>
    );
  }
  const px = (kg: number) => (Math.max(0, kg) / fullScaleKg) * TALL_PX;
  const { kg, limitKg, leftKg } = load;
  const withinKg = limitKg === null ? kg : Math.min(kg, limitKg);
  return (
    <g>
      <rect className="axle-load" x={x - WIDE_PX / 2} y={top} width={WIDE_PX} height={px(withinKg)} />
      {limitKg !== null && kg > limitKg && (
        <rect
          className="axle-over"
          x={x - WIDE_PX / 2}
          y={top + px(limitKg)}
          width={WIDE_PX}
          height={px(kg) - px(limitKg)}
        />
      )}
      {limitKg !== null && (
        <path className="axle-limit" d={`M${x - WIDE_PX / 2 - 5},${top + px(limitKg)}h${WIDE_PX + 10}`} />
      )}
      <text className="axle-words" {...wordsAt} y={top + 12}>
        <tspan className="strong">{formatMass(kg, units)}</tspan>
        <tspan {...wordsAt} dy={16} className={leftKg !== null && leftKg < 0 ? 'over' : ''}>
          {leftKg === null
            ? t('limit not told')
            : leftKg < 0
              ? t`${formatMass(-leftKg, units)} over`
              : t`${formatMass(leftKg, units)} left`}
        </tspan>
        {limitKg !== null && <tspan {...wordsAt} dy={16}>{tx`of ${formatMass(limitKg, units)}`}</tspan>}
      </text>
    </g>
  );
}
