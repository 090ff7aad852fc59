import type { Commodity } from '../../server/contract/common.ts';
import { textWidthPx } from '../kit/text-width.ts';
import type { CanSpan } from '../levels/can-spans.ts';
import type { HalfPlan } from '../levels/plan-report.ts';
import { countCans } from '../words/plan-words.ts';
import { drinkableLine, type HalfScale, planAreas } from './area-path.ts';
import type { StripFrame } from './strip-frame.ts';

/** What the plan has aboard: the tanks filled in, every full can a band of its own beyond them, and where tanks are full. */
export function PlanArea(props: { plan: HalfPlan; scale: HalfScale; capacityL: number; frame: StripFrame }) {
  const { tanks, cans } = planAreas(props.plan.levels, props.scale);
  const drinkable = drinkableLine(props.plan.levels, props.scale);
  const fullX = props.scale.baseX + props.capacityL * props.scale.pxPerLitre;
  return (
    <>
      {tanks !== null && <path className="strip-left" d={tanks} />}
      {cans.map((can) => (
        <path key={can} className="strip-can" d={can} />
      ))}
      {drinkable !== null && <path className="strip-drinkable" d={drinkable} />}
      <line
        className="strip-capacity"
        x1={fullX}
        x2={fullX}
        y1={props.frame.topPx}
        y2={props.frame.bottomPx}
      />
    </>
  );
}

/** Outside the half: a bar as long as full cans are carried, with their count; a dot where one is poured. */
export function CanBar({ plan, outerX, frame }: { plan: HalfPlan; outerX: number; frame: StripFrame }) {
  const { yOfKm } = frame;
  return (
    <g className="strip-can-bar">
      {plan.cans.map(({ fromKm, toKm }) => (
        <line key={`${fromKm} ${toKm}`} x1={outerX} x2={outerX} y1={yOfKm(fromKm)} y2={yOfKm(toKm)} />
      ))}
      {plan.cans.map((span) => {
        const y = (yOfKm(span.fromKm) + yOfKm(span.toKm)) / 2;
        const words = canWords(span, yOfKm(span.fromKm) - yOfKm(span.toKm));
        return (
          <text
            key={span.fromKm}
            textAnchor="middle"
            transform={`translate(${outerX + 3.8} ${y}) rotate(-90)`}
          >
            {words}
          </text>
        );
      })}
      {plan.poursKm.map((km, i) => (
        // Two can be poured at one place.
        // biome-ignore lint/suspicious/noArrayIndexKey: pours have their order and nothing else
        <circle key={i} cx={outerX} cy={yOfKm(km)} r={3.2} />
      ))}
    </g>
  );
}

const COUNT_PX = 10.5;
/** A dot at either end, and a little of the bar. */
const BESIDE_COUNT_PX = 16;

/** What of "4 cans" stands within so much of the bar. */
export function canWords({ cans }: Pick<CanSpan, 'cans'>, roomPx: number): string {
  const fits = (words: string): boolean => textWidthPx(words, COUNT_PX) + BESIDE_COUNT_PX <= roomPx;
  return [countCans(cans), String(cans)].find(fits) ?? '';
}

/** Where supplies that are passed by stand closer than this, only faint ticks are left of them. */
const CROWDED_PX = 6;

/** At the road's edge: a filled mark where the plan fills, fuel square and water round; a tick where it passes by. */
export function PlanStops(props: { stops: HalfPlan['stops']; commodity: Commodity; frame: StripFrame }) {
  const { baseX } = props.frame[props.commodity];
  const outward = props.commodity === 'fuel' ? -1 : 1;
  const x = baseX + outward * 5;
  const { shown, topPx, bottomPx } = props.frame;
  const visible = props.stops.filter(({ atKm }) => atKm >= shown.fromKm && atKm <= shown.toKm);
  const passedCount = visible.filter(({ used }) => !used).length;
  const crowded = passedCount * CROWDED_PX > bottomPx - topPx;
  return (
    <g className="strip-stops">
      {visible.map(({ atKm, name, used }) => {
        const y = props.frame.yOfKm(atKm);
        const key = `${atKm} ${name}`;
        if (!used) {
          const lengthPx = crowded ? 4 : 10;
          const className = crowded ? 'strip-passed strip-faint-mark' : 'strip-passed';
          return (
            <line key={key} className={className} x1={baseX} x2={baseX + outward * lengthPx} y1={y} y2={y} />
          );
        }
        if (props.commodity === 'water')
          return <circle key={key} className="strip-used" cx={x} cy={y} r={5} />;
        return <rect key={key} className="strip-used" x={x - 4.5} y={y - 4.5} width={9} height={9} />;
      })}
    </g>
  );
}
