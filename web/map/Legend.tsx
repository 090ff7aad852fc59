import { type ReactNode, useEffect, useRef } from 'react';
import type { PlanOnMap } from './style/plan-on-map.ts';

/** Below this the legend starts closed: the map needs the room. */
const OPEN_FROM_PX = 560;

/** What the lines and marks mean. */
export function Legend({ fuelWord, plan }: { fuelWord: string; plan: PlanOnMap | null }) {
  const box = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const map = box.current?.parentElement;
    if (box.current && map && map.clientWidth < OPEN_FROM_PX) box.current.open = false;
  }, []);
  return (
    <details className="map-legend" ref={box} open>
      <summary>
        <span className="map-legend-side map-legend-fuel">{`Left: ${fuelWord}`}</span>
        <span className="map-legend-side map-legend-water">Right: drinking water</span>
      </summary>
      <ul>
        <Row words="what is left">
          <polygon className="legend-fuel" points="0,2 36,7 36,9 0,12" />
        </Row>
        <Row words="into the reserve">
          <line
            className="legend-fuel-line"
            x1={0}
            x2={36}
            y1={7}
            y2={7}
            strokeWidth={5}
            strokeDasharray="5 4"
          />
        </Row>
        <Row words="runs dry">
          {[0, 6, 12, 18, 24, 30].map((x) => (
            <polygon key={x} className="legend-dry" points={`${x},12 ${x + 3},12 ${x + 6},2 ${x + 3},2`} />
          ))}
        </Row>
        <Row words="no map data">
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
        </Row>
        <Row words="supply counts">
          <rect className="legend-fuel" x={5} y={1} width={11} height={12} rx={1.5} />
          <path className="legend-water" d={DROP} transform="translate(27 8.6)" />
        </Row>
        <Row words="does not count">
          <rect
            className="legend-fuel-line"
            x={6}
            y={2}
            width={9}
            height={10}
            rx={1.5}
            fill="none"
            strokeWidth={1.6}
          />
          <path
            className="legend-water-line"
            d={DROP}
            transform="translate(27 8.6)"
            fill="none"
            strokeWidth={1.6}
          />
        </Row>
        {plan !== null && plan.used.size > 0 && (
          <Row words="the plan fills here">
            <rect className="legend-fuel" x={6} y={3} width={8} height={8} />
            <rect className="legend-fuel-line" x={3.5} y={0.9} width={13} height={12.2} rx={2} fill="none" />
            <circle className="legend-water" cx={27} cy={7} r={3.6} />
            <circle className="legend-water-line" cx={27} cy={7} r={6.2} fill="none" />
          </Row>
        )}
        {plan?.marks.some(({ properties }) => properties.what !== 'cans') && (
          <Row words="turn back; the first, filled">
            <path className="legend-turn" d="M10,1 L16,7 L10,13 L4,7 Z" />
            <path className="legend-turn legend-turn-later" d="M27,1 L33,7 L27,13 L21,7 Z" />
          </Row>
        )}
        {plan !== null && plan.cans.length > 0 && (
          <Row words="full cans carried">
            <line className="legend-fuel-line" x1={0} x2={15} y1={7} y2={7} strokeWidth={2.4} />
            <line className="legend-water-line" x1={21} x2={36} y1={7} y2={7} strokeWidth={2.4} />
          </Row>
        )}
        <Row words="edge of a stretch: short, into reserve, unknown" wide>
          <line className="legend-dry-line" x1={0} x2={11} y1={7} y2={7} strokeWidth={2.4} />
          <line
            className="legend-ink-line"
            x1={14}
            x2={24}
            y1={7}
            y2={7}
            strokeWidth={1.8}
            strokeDasharray="4 2"
          />
          <line
            className="legend-ink-line"
            x1={27}
            x2={36}
            y1={7}
            y2={7}
            strokeWidth={2}
            strokeDasharray="1.5 2"
          />
        </Row>
      </ul>
    </details>
  );
}

const DROP = 'M0,-8 L4,-1.5 A4.6,4.6 0 1 1 -4,-1.5 Z';

function Row({ words, wide, children }: { words: string; wide?: boolean; children: ReactNode }) {
  return (
    <li className={wide === true ? 'map-legend-wide' : undefined}>
      <svg width={36} height={14} viewBox="0 0 36 14" aria-hidden="true" focusable="false">
        {children}
      </svg>
      {words}
    </li>
  );
}
