import type { ReactNode } from 'react';
import type { Term } from '../../server/contract/analysis.ts';
import type { MassReport, MassState } from '../../server/contract/vehicle.ts';
import { Terms } from '../kit/Terms.tsx';
import { Why } from '../kit/Why.tsx';
import { inSentence } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAs, formatLength, formatLitres, formatMass, type UnitSystem } from '../units/units.ts';
import { inUnits } from '../words/said.ts';

const NOT_KNOWN = t('not known');

/** The figures of one state against what is permitted, each with where it comes from. */
export function MassTable({ state, mass, units }: { state: MassState; mass: MassReport; units: UnitSystem }) {
  const { totalKg, payloadLeftKg, front, rear, sideKg, cgHeightM, stabilityFactor } = state;
  const summed = (terms: readonly Term[]): ReactNode => (
    <>
      {state.kind !== 'departure' && (
        <p>{tx`Summed as at departure, below, but with ${formatLitres(state.fuelL, units)} of fuel and ${formatLitres(state.waterL, units)} of water aboard.`}</p>
      )}
      <Terms terms={terms} units={units} />
      {mass.densities.map(({ what, kgPerLitre, source, sourceParts }) => (
        <p key={what}>
          {what}: {formatAs('litreMass', kgPerLitre, units, 3)}, {inUnits(units, source, sourceParts)}
        </p>
      ))}
    </>
  );
  return (
    <table className="plain-table mass-table">
      <caption className="only-read">{t('Masses against what is permitted')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Weighs')}</th>
          <th scope="col" className="end">
            {t('now')}
          </th>
          <th scope="col" className="end">
            {t('permitted')}
          </th>
          <th scope="col" className="end">
            {t('left')}
          </th>
        </tr>
      </thead>
      <tbody>
        <Row
          label={t('In all')}
          kg={totalKg}
          limitKg={payloadLeftKg === null ? null : totalKg + payloadLeftKg}
          leftKg={payloadLeftKg}
          units={units}
          why={summed(mass.working.totalKg)}
        />
        <Row
          label={t('Front axle')}
          kg={front?.kg ?? null}
          limitKg={front?.limitKg ?? null}
          leftKg={front?.leftKg ?? null}
          units={units}
          why={front === null ? null : summed(mass.working.frontKg)}
        />
        <Row
          label={t('Rear axle')}
          kg={rear?.kg ?? null}
          limitKg={rear?.limitKg ?? null}
          leftKg={rear?.leftKg ?? null}
          units={units}
          why={rear === null ? null : summed(mass.working.rearKg)}
        />
        {mass.roof !== null && (
          <Row
            label={t('On the roof, all full')}
            kg={mass.roof.kg}
            limitKg={mass.roof.limitKg}
            leftKg={mass.roof.limitKg === null ? null : mass.roof.limitKg - mass.roof.kg}
            units={units}
            why={t("Everything whose middle is as high as the cabin's roof or higher.")}
          />
        )}
        {mass.behindRearAxle !== null && mass.behindRearAxle.kg > 0 && (
          <tr>
            <th scope="row">{tx`Behind the rear axle, all full ${<Why of={t('the load behind the rear axle')}>{tx`It puts ${formatMass(mass.behindRearAxle.rearKg, units)} on the rear axle and takes ${formatMass(-mass.behindRearAxle.frontKg, units)} off the front one.`}</Why>}`}</th>
            <td className="end">{formatMass(mass.behindRearAxle.kg, units)}</td>
            <td />
            <td />
          </tr>
        )}
        <tr>
          <th scope="row">{tx`Heavier side ${<Why of={t('the heavier side')}>{t('Right wheels less left ones, from how far each thing is from the middle, and the track.')}</Why>}`}</th>
          <td className="end" colSpan={3}>
            {sideWords(sideKg, units)}
          </td>
        </tr>
        <tr>
          <th scope="row">{tx`Centre of gravity ${<Why of={t('the centre of gravity')}>{t('The height of everything, weighted by mass. Above the ground.')}</Why>}`}</th>
          <td className="end" colSpan={3}>
            {cgHeightM === null ? NOT_KNOWN : t`${formatLength(cgHeightM, units)} up`}
          </td>
        </tr>
        <tr>
          <th scope="row">{tx`Static stability factor ${<Why of={t('the static stability factor')}>{t('Track ÷ (2 × height of the centre of gravity), as the US road safety agency (NHTSA) defines it: the lower, the sooner it tips. It knows nothing of springs and slopes.')}</Why>}`}</th>
          <td className="end" colSpan={3}>
            {stabilityFactor === null ? NOT_KNOWN : stabilityFactor.toFixed(2)}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

interface RowProps {
  label: string;
  kg: number | null;
  limitKg: number | null;
  leftKg: number | null;
  units: UnitSystem;
  why: ReactNode;
}

function Row({ label, kg, limitKg, leftKg, units, why }: RowProps) {
  return (
    <tr>
      <th scope="row">
        {label} {why !== null && <Why of={inSentence(label)}>{why}</Why>}
      </th>
      <td className="end strong">{kg === null ? NOT_KNOWN : formatMass(kg, units)}</td>
      <td className="end">{limitKg === null ? t('not told') : formatMass(limitKg, units)}</td>
      <td className={leftKg !== null && leftKg < 0 ? 'end over' : 'end'}>
        {leftKg === null
          ? '–'
          : leftKg < 0
            ? t`${formatMass(-leftKg, units)} over`
            : formatMass(leftKg, units)}
      </td>
    </tr>
  );
}

function sideWords(sideKg: number | null, units: UnitSystem): string {
  if (sideKg === null) return NOT_KNOWN;
  if (Math.abs(sideKg) < 0.5) return t('even');
  return t`${sideKg > 0 ? t('side|right') : t('side|left')} by ${formatMass(Math.abs(sideKg), units)}`;
}
