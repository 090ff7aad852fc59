import type { Passing } from '../../server/contract/analysis.ts';
import type { Plan, PlanAim } from '../../server/contract/plan.ts';
import { WhatToKnow } from '../kit/WhatToKnow.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import {
  distanceIn,
  distanceUnit,
  formatAtKm,
  formatFigure,
  formatKm,
  formatLitres,
  formatMass,
  type UnitSystem,
} from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import { countCans } from '../words/plan-words.ts';
import { inUnits } from '../words/said.ts';

type AimWords = (value: number, units: UnitSystem) => string;

const AIM_WORDS: Record<PlanAim['aim'], AimWords> = {
  'doubtful-km': (value, units) => t`hangs on doubtful supplies for ${formatKm(value, units)}`,
  'implied-km': (value, units) => t`hangs on supplies that are only likely for ${formatKm(value, units)}`,
  'stated-km': (value, units) => t`hangs on supplies that only the map lists for ${formatKm(value, units)}`,
  'cans-to-get': (value) =>
    value === 0 ? t('no can beyond those owned') : t`${countCans(value)} beyond those owned`,
  'lost-h': (value) => t`${formatFigure(value, 1)} h lost on waiting, filling and detours`,
  'driving-km': (value, units) =>
    t`${formatKm(value, units)} of driving to supplies that do not lie beside the route`,
  'can-km': (value, units) =>
    t`full cans carried: ${formatFigure(distanceIn(value, units), 0)} can-${distanceUnit(units) === 'km' ? t('kilometres') : t('miles')}`,
  'least-margin-km': (value, units) => t`the tightest leg bears ${formatKm(value, units)} of detour more`,
  'short-fill-l': (value, units) =>
    t`${formatLitres(value, units)} left out of the tanks for a permitted mass`,
};

const DECIMALS_OF_GAP = 1;

/** What the plan takes for granted, how good it is, and what it weighs. */
export function RestsOn({
  plan,
  passings,
  units,
}: {
  plan: Plan;
  passings: readonly Passing[];
  units: UnitSystem;
}) {
  const used = plan.stops.flatMap((stop) => stop.passings.filter((passing) => passing.used));
  const aims = plan.aims.filter(({ aim, value, proven }) => aim !== 'short-fill-l' || value !== 0 || !proven);
  return (
    <>
      <section aria-labelledby="plan-rests">
        <h3 id="plan-rests">{t('What it rests on')}</h3>
        {plan.restsOn.length === 0 ? (
          <p>{t('On nothing that is not known.')}</p>
        ) : (
          <ul>
            {plan.restsOn.map(({ code, text, parts, fromKm, toKm }) => (
              <li key={`${code} ${fromKm ?? ''} ${text}`}>
                {fromKm !== undefined && (
                  <b>
                    {formatAtKm(fromKm, units)}
                    {toKm === undefined || toKm === fromKm ? '' : t` to ${formatAtKm(toKm, units)}`}:{' '}
                  </b>
                )}
                {withoutPaths(inUnits(units, text, parts))}
              </li>
            ))}
          </ul>
        )}
        <WhatToKnow {...{ passings, units }} places={used} />
      </section>
      <section aria-labelledby="plan-aims">
        <h3 id="plan-aims">{t('How good it is, the first before the next')}</h3>
        <ol>
          {aims.map(({ aim, value, proven, gap }) => (
            <li key={aim}>
              {AIM_WORDS[aim](value, units)}:{' '}
              {proven
                ? t('none better exists')
                : t`not proven, up to ${formatFigure(gap, DECIMALS_OF_GAP)} better may exist`}
            </li>
          ))}
        </ol>
      </section>
      <Masses masses={plan.masses} units={units} />
    </>
  );
}

function Masses({ masses, units }: { masses: Plan['masses']; units: UnitSystem }) {
  if (masses === null || masses.length === 0) {
    return <p className="soft">{t('No vehicle is told: masses are not held against any limit.')}</p>;
  }
  const heaviest = masses.reduce((most, each) => (each.totalKg > most.totalKg ? each : most));
  const most = (loads: readonly (number | null)[]) => {
    const told = loads.filter((load) => load !== null);
    return told.length === 0 ? null : Math.max(...told);
  };
  const front = most(masses.map(({ frontKg }) => frontKg));
  const rear = most(masses.map(({ rearKg }) => rearKg));
  return (
    <p>{tx`Heaviest at ${formatAtKm(heaviest.atKm, units)}: ${formatMass(heaviest.totalKg, units)}.${front !== null && t` Most on the front axle ${formatMass(front, units)}`}${rear !== null && t`, on the rear axle ${formatMass(rear, units)}`}${front !== null && '.'}`}</p>
  );
}
