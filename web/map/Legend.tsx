import type { ReactNode } from 'react';
import { t } from '../language/t.ts';
import { LEGEND_LAYERS, type LegendKey } from './style/legend-keys.ts';

interface Props {
  fuelWord: string;
  /** Which rows speak of something that is drawn. */
  keys: ReadonlySet<LegendKey>;
}

/** What the lines and marks mean: one line until it is opened. */
export function Legend({ fuelWord, keys }: Props) {
  return (
    <details className="map-legend">
      <summary>
        <span className="map-legend-side map-legend-fuel">{t`Left: ${fuelWord}`}</span>
        <span className="map-legend-side map-legend-water">{t('Right: drinking water')}</span>
      </summary>
      <ul>
        {(Object.keys(LEGEND_LAYERS) as LegendKey[])
          .filter((key) => keys.has(key))
          .map((key) => (
            <li key={key} data-key={key}>
              <svg width={36} height={14} viewBox="0 0 36 14" aria-hidden="true" focusable="false">
                {ROWS[key].picture}
              </svg>
              {ROWS[key].words}
            </li>
          ))}
      </ul>
    </details>
  );
}

const DROP = 'M0,-8 L4,-1.5 A4.6,4.6 0 1 1 -4,-1.5 Z';

/** A line across the row's picture, or part of it. */
function Line(props: { className: string; width: number; dash?: string; from?: number; to?: number }) {
  const { className, width, dash, from = 0, to = 36 } = props;
  return (
    <line
      className={className}
      x1={from}
      x2={to}
      y1={7}
      y2={7}
      strokeWidth={width}
      {...(dash === undefined ? {} : { strokeDasharray: dash })}
    />
  );
}

const ROWS: Record<LegendKey, { words: string; picture: ReactNode }> = {
  route: {
    words: t('the route, nothing to worry about'),
    picture: <Line className="legend-ink-line" width={2} />,
  },
  left: {
    words: t('what is left where a stretch gives trouble'),
    picture: <polygon className="legend-fuel" points="0,2 36,7 36,9 0,12" />,
  },
  reserve: {
    words: t('into the reserve'),
    picture: <Line className="legend-fuel-line" width={5} dash="5 4" />,
  },
  dry: {
    words: t('runs dry'),
    picture: [0, 6, 12, 18, 24, 30].map((x) => (
      <polygon key={x} className="legend-dry" points={`${x},12 ${x + 3},12 ${x + 6},2 ${x + 3},2`} />
    )),
  },
  verdicts: {
    words: t('edge: runs dry, into the reserve, not known'),
    picture: (
      <>
        <Line className="legend-dry-line" width={2.4} to={11} />
        <Line className="legend-ink-line" width={1.8} dash="4 2" from={14} to={24} />
        <Line className="legend-ink-line" width={2} dash="1.5 2" from={27} />
      </>
    ),
  },
  'no-cover': {
    words: t('no map data along the route'),
    picture: (
      <line
        className="legend-ink-line"
        x1={2}
        x2={36}
        y1={7}
        y2={7}
        strokeWidth={3.4}
        strokeLinecap="round"
        strokeDasharray="0 6"
      />
    ),
  },
  cans: {
    words: t('framed: full cans carried'),
    picture: (
      <g fill="none" strokeWidth={1.6}>
        <rect className="legend-fuel-line" x={1} y={1.5} width={15} height={11} />
        <rect className="legend-water-line" x={20} y={1.5} width={15} height={11} />
      </g>
    ),
  },
  closed: { words: t('closed'), picture: <Line className="legend-ink-line" width={9} dash="3 4.5" /> },
  supplies: {
    words: t('supply relied on'),
    picture: (
      <>
        <rect className="legend-fuel" x={5} y={1} width={11} height={12} rx={1.5} />
        <path className="legend-water" d={DROP} transform="translate(27 8.6)" />
      </>
    ),
  },
  hollow: {
    words: t('not relied on'),
    picture: (
      <g fill="none" strokeWidth={1.6}>
        <rect className="legend-fuel-line" x={6} y={2} width={9} height={10} rx={1.5} />
        <path className="legend-water-line" d={DROP} transform="translate(27 8.6)" />
      </g>
    ),
  },
  clusters: {
    words: t('several near each other'),
    picture: (
      <>
        <rect className="legend-fuel" x={5} y={2} width={10} height={10} rx={1.5} />
        <text className="legend-count" x={19} y={12}>
          5
        </text>
      </>
    ),
  },
  stops: {
    words: t('the plan fills here'),
    picture: (
      <>
        <rect className="legend-fuel" x={6} y={3} width={8} height={8} />
        <rect className="legend-fuel-line" x={3.5} y={0.9} width={13} height={12.2} rx={2} fill="none" />
        <circle className="legend-water" cx={27} cy={7} r={3.6} />
        <circle className="legend-water-line" cx={27} cy={7} r={6.2} fill="none" />
      </>
    ),
  },
  'turn-backs': {
    words: t('turn back; the first, filled'),
    picture: (
      <>
        <path className="legend-turn" d="M10,1 L16,7 L10,13 L4,7 Z" />
        <path className="legend-turn legend-turn-later" d="M27,1 L33,7 L27,13 L21,7 Z" />
      </>
    ),
  },
  roads: {
    words: t('road, wider for the greater'),
    picture: (
      <>
        <Line className="legend-road-line" width={4} to={16} />
        <Line className="legend-road-line" width={1.6} from={20} />
      </>
    ),
  },
  tracks: { words: t('track'), picture: <Line className="legend-soft-line" width={1} dash="4 3" /> },
  water: {
    words: t('river, lake'),
    picture: (
      <>
        <Line className="legend-stream-line" width={2} to={16} />
        <Line className="legend-stream-line" width={10} from={20} />
      </>
    ),
  },
  borders: { words: 'border', picture: <Line className="legend-soft-line" width={1} dash="6 2 1 2" /> },
  extracts: {
    words: t('edge of the map data; hatched: none'),
    picture: (
      <>
        <Line className="legend-soft-line" width={1.2} dash="2.4 2.4" to={15} />
        {[20, 26, 32].map((x) => (
          <line key={x} className="legend-rule-line" x1={x} x2={x + 4} y1={2} y2={12} strokeWidth={1.4} />
        ))}
      </>
    ),
  },
};
