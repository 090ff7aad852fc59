import { Fragment } from 'react';
import type { Gap, Passing } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import { Terms } from '../kit/Terms.tsx';
import { WhatToKnow } from '../kit/WhatToKnow.tsx';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import {
  formatAtKm,
  formatBeforeKm,
  formatDays,
  formatKm,
  formatLitres,
  type UnitSystem,
} from '../units/units.ts';
import { countCans } from '../words/plan-words.ts';
import { saidIn } from '../words/said.ts';
import { EVIDENCE_WORDS, edgeName, VERDICT_WORDS } from '../words/words.ts';

interface GapDetailsProps {
  gap: Gap;
  commodity: Commodity;
  passings: readonly Passing[];
  canL: number;
  units: UnitSystem;
}

/** Everything reckoned about one stretch, and the terms it was reckoned from. */
export function GapDetails({ gap, commodity, passings, canL, units }: GapDetailsProps) {
  const ends = [gap.from, gap.to].flatMap(({ id, atKm }) => (id === null ? [] : [{ id, commodity, atKm }]));
  const litres = (value: number) => formatLitres(value, units);
  return (
    <div className="gap-details">
      <dl>
        <dt>{t('Way')}</dt>
        <dd>
          {formatKm(gap.wayKm, units)}, {formatDays(gap.days)}
        </dd>
        <dt>{t('Aboard at the start of it')}</dt>
        <dd>{litres(gap.departL)}</dd>
        <dt>{t('Reserve to keep')}</dt>
        <dd>{litres(gap.reserveL)}</dd>
        {gap.grades != null && <Grades grades={gap.grades} units={units} />}
        <dt>{t('Margin')}</dt>
        <dd>
          {gap.marginL < 0
            ? t`${litres(-gap.marginL)} too little`
            : t`${litres(gap.marginL)} above the reserve`}
        </dd>
        {gap.extraL > 0 && (
          <>
            <dt>{t('Extra to carry')}</dt>
            <dd>
              {litres(gap.extraL)}
              {inCans(gap.extraCans, litres(canL))}
            </dd>
          </>
        )}
        {gap.reserveFromKm !== null && (
          <>
            <dt>{t('Into the reserve from')}</dt>
            <dd>{formatAtKm(gap.reserveFromKm, units)}</dd>
          </>
        )}
        {gap.runsDryKm !== null && (
          <>
            <dt>{t('Runs dry at')}</dt>
            <dd>{formatAtKm(gap.runsDryKm, units)}</dd>
          </>
        )}
        <dt>{t('Turn back before')}</dt>
        <dd>
          {gap.turnBackKm === null
            ? t('no turning back with the reserve intact')
            : formatBeforeKm(gap.turnBackKm, units)}
        </dd>
        <dt>{t('Weakest end')}</dt>
        <dd>{gap.weakest === null ? t('start and end of the route') : EVIDENCE_WORDS[gap.weakest]}</dd>
        {gap.ifToFails !== null && (
          <>
            <dt>{tx`If ${edgeName(gap.to)} fails`}</dt>
            <dd>{tx`${VERDICT_WORDS[gap.ifToFails.verdict]} to the next supply, ${
              gap.ifToFails.marginL < 0
                ? t`${litres(-gap.ifToFails.marginL)} too little`
                : t`${litres(gap.ifToFails.marginL)} above the reserve`
            }; ${edgeName(gap.from)} ${gap.ifToFails.canReturn ? t('may|can') : t('may|cannot')} be regained`}</dd>
          </>
        )}
      </dl>
      {gap.skipHelps && (
        <p>{t('Leaving one of its ends out would better a verdict: its detour costs more than it gives.')}</p>
      )}
      {gap.acrossNoData && <p>{t('Part of this stretch is outside the extracts; it was taken as dry.')}</p>}
      <WhatToKnow {...{ passings, units }} places={ends} />
      {gap.rescue.length > 0 && <Rescues gap={gap} units={units} />}
      <details>
        <summary>{t('How it was reckoned')}</summary>
        <h4>{t('Way')}</h4>
        <Terms terms={gap.working.wayKm} units={units} />
        <h4>{t('Need')}</h4>
        <Terms terms={gap.working.needL} units={units} />
        <h4>{t('Reserve')}</h4>
        <Terms terms={gap.working.reserveL} units={units} />
      </details>
    </div>
  );
}

/** What drinking and washing need of it, each with its own end. */
function Grades({ grades, units }: { grades: NonNullable<Gap['grades']>; units: UnitSystem }) {
  return (
    <>
      {(['drinking', 'washing'] as const).map((grade) => {
        const { needL, arriveL, verdict } = grades[grade];
        return (
          <Fragment key={grade}>
            <dt>{tx`Of it for ${worded(grade)}`}</dt>
            <dd>{tx`${formatLitres(needL, units)} needed, ${formatLitres(arriveL, units)} left: ${VERDICT_WORDS[verdict]}`}</dd>
          </Fragment>
        );
      })}
      {grades.washingTakenL > 0 && (
        <>
          <dt>{t('Washing water taken on the way')}</dt>
          <dd>{formatLitres(grades.washingTakenL, units)}</dd>
        </>
      )}
    </>
  );
}

function Rescues({ gap, units }: { gap: Gap; units: UnitSystem }) {
  return (
    <>
      <h4>{t('What could rescue it')}</h4>
      <ul>
        {gap.rescue.map((point) => (
          <li
            key={`${point.id} ${point.atKm}`}
          >{tx`${<b>{point.name ?? point.kind}</b>}${point.name === null ? '' : `, ${point.kind}`}: ${formatAtKm(point.atKm, units)}, ${formatKm(point.detourKm, units)} off, ${EVIDENCE_WORDS[point.evidence]}${
            point.counts
              ? ''
              : t`; not relied on: ${point.reasons.map((reason) => saidIn(units, reason)).join('; ')}`
          }`}</li>
        ))}
      </ul>
    </>
  );
}

/** What takes what is missing: so many cans, or none where it is a gas. */
const inCans = (cans: number, size: string): string =>
  cans === 0 ? t(', in no can') : t`: ${countCans(cans)} of ${size}`;
