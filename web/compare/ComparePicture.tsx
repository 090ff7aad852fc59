import { useId } from 'react';
import type { ComparedGap, ComparedRig, Comparison } from '../../server/contract/answers/compare.ts';
import type { Commodity, Verdict } from '../../server/contract/common.ts';
import { useSize } from '../kit/hooks/use-size.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { StripPatterns } from '../marks/StripPatterns.tsx';
import { distanceUnit, figureAtKm, type UnitSystem } from '../units/units.ts';
import { VERDICT_WORDS } from '../words/words.ts';

const BAR_PX = 11;
const NAME_PX = 17;
const RIG_PX = NAME_PX + 2 * (BAR_PX + 3) + 9;
const FOOT_PX = 20;
const FIRST_SIZE = { widthPx: 370, heightPx: 200 };
const VERDICTS: readonly Verdict[] = ['enough', 'into-reserve', 'short', 'unknown'];

/** Fill of a stretch by its verdict: full, striped, hatched, dotted, as on the strip. */
const fillOf = (verdict: Verdict, commodity: Commodity, patterns: string): string => {
  if (verdict === 'enough') return `var(--${commodity})`;
  const look = { 'into-reserve': 'stripes', short: 'hatch', unknown: 'dots' }[verdict];
  return `url(#${patterns}${commodity}-${look})`;
};

/** The route once for each rig and commodity, start left and end right, each stretch by its verdict. */
export function ComparePicture({ comparison, units }: { comparison: Comparison; units: UnitSystem }) {
  const [box, { widthPx }] = useSize<HTMLDivElement>(FIRST_SIZE);
  const patterns = `${useId().replace(/[^\w-]/g, '')}-`;
  const { rigs, route } = comparison;
  const heightPx = rigs.length * RIG_PX + FOOT_PX;
  const xOf = (km: number) => (km / Math.max(route.lengthKm, 1e-9)) * widthPx;
  return (
    <figure className="compare-picture">
      <div ref={box}>
        <svg width={widthPx} height={heightPx} role="img" aria-label={inWords(rigs)}>
          <StripPatterns prefix={patterns} />
          {rigs.map((rig, place) => (
            <g key={rig.name} transform={`translate(0 ${place * RIG_PX})`}>
              <text x={0} y={NAME_PX - 5} className="compare-name">
                {rig.name}
              </text>
              {(['fuel', 'water'] as const).map((commodity, row) => (
                <g key={commodity} transform={`translate(0 ${NAME_PX + row * (BAR_PX + 3)})`}>
                  {rig[commodity].gaps.map((gap) => (
                    <Stretch
                      key={gap.fromKm}
                      {...{ gap, xOf }}
                      fill={fillOf(gap.verdict, commodity, patterns)}
                    />
                  ))}
                </g>
              ))}
            </g>
          ))}
          <g className="compare-ends">
            <text x={0} y={heightPx - 5}>
              {figureAtKm(0, units)}
            </text>
            <text x={widthPx} y={heightPx - 5} textAnchor="end">
              {`${figureAtKm(route.lengthKm, units)} ${distanceUnit(units)}`}
            </text>
          </g>
        </svg>
      </div>
      <figcaption>{tx`Above fuel, below water. ${VERDICTS.map((verdict) => (
        <span className="compare-key" key={verdict}>
          <svg width={30} height={BAR_PX} aria-hidden="true">
            <Stretch
              gap={{ fromKm: 0, toKm: 30 }}
              xOf={(km) => km}
              fill={fillOf(verdict, 'water', patterns)}
            />
          </svg>{' '}
          {VERDICT_WORDS[verdict]}
        </span>
      ))}`}</figcaption>
    </figure>
  );
}

function Stretch(props: {
  gap: Pick<ComparedGap, 'fromKm' | 'toKm'>;
  xOf: (km: number) => number;
  fill: string;
}) {
  const { gap, xOf, fill } = props;
  const x = xOf(gap.fromKm);
  return (
    <rect
      className="compare-stretch"
      x={x + 0.5}
      y={0.5}
      width={Math.max(1, xOf(gap.toKm) - x - 1)}
      height={BAR_PX - 1}
      fill={fill}
    />
  );
}

/** The picture for those who do not see it; the table beside it has the figures. */
function inWords(rigs: readonly ComparedRig[]): string {
  return rigs
    .map((rig) => {
      const of = (commodity: Commodity) =>
        VERDICTS.filter((verdict) => rig[commodity].verdicts[verdict] > 0)
          .map((verdict) => `${rig[commodity].verdicts[verdict]} ${VERDICT_WORDS[verdict]}`)
          .join(', ');
      return t`${rig.name}: fuel ${of('fuel')}; water ${of('water')}.`;
    })
    .join(' ');
}
