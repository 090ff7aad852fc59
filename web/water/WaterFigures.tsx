import type { GradeUse, WaterUse } from '../../server/contract/crew.ts';
import { Terms } from '../kit/Terms.tsx';
import { Why } from '../kit/Why.tsx';
import {
  figureLitres,
  formatAtKm,
  formatDays,
  formatFigure,
  formatLitres,
  formatTemperature,
  type UnitSystem,
  volumeUnit,
} from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import { inUnits, saidIn } from '../words/said.ts';
import { FROM_WORDS, SUN_WORDS, USE_WORDS } from './use-words.ts';
import '../table/plain-table.css';
import { worded } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

type Bounds = WaterUse['litresPerDay'];
const ENDS = ['low', 'typical', 'high'] as const;

/** What the crew, the heat and the tanks come to: litres a day by grade, days that they last, and what must stay aboard. */
export function WaterFigures({ use, units }: { use: WaterUse; units: UnitSystem }) {
  // What mixing does is told above with its place.
  const cautions = use.cautions.filter(({ text }) => !use.mixing.some((fill) => fill.text === text));
  return (
    <section className="comes-of-it" aria-label={t('What water is used and how long it lasts')}>
      <UseTable use={use} units={units} />
      <EnduranceTable use={use} units={units} />
      <ReserveWords reserve={use.reserve} units={units} />
      {use.heat !== null && <HeatWords heat={use.heat} units={units} />}
      <p>{use.treatText}</p>
      {use.mixing.length > 0 && (
        <ul>
          {use.mixing.map((fill) => (
            <li key={`${fill.id} ${fill.atKm}`}>
              <b>{formatAtKm(fill.atKm, units)}:</b> {saidIn(units, fill)}
            </li>
          ))}
        </ul>
      )}
      {cautions.length > 0 && (
        <ul>
          {cautions.map((caution) => (
            <li key={`${caution.code} ${caution.text}`}>{withoutPaths(saidIn(units, caution))}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Three({ of, units }: { of: Bounds; units: UnitSystem }) {
  return ENDS.map((end) => (
    <td className="end" key={end}>
      {figureLitres(of[end], units)}
    </td>
  ));
}

function UseTable({ use, units }: { use: WaterUse; units: UnitSystem }) {
  const { grades, uses } = use;
  return (
    <table className="plain-table">
      <caption>{tx`Water used, ${volumeUnit(units)} a day`}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Use')}</th>
          {ENDS.map((end) => (
            <th scope="col" className="end" key={end}>
              {worded(end)}
            </th>
          ))}
        </tr>
      </thead>
      {grades !== null &&
        (['drinking', 'washing'] as const).map((grade) => (
          <tbody key={grade}>
            <tr className="sum">
              <th scope="row">{grade === 'drinking' ? t('Drinking grade') : t('For washing')}</th>
              <Three of={grades[grade].litresPerDay} units={units} />
            </tr>
            {uses
              .filter((one) => one.grade === grade)
              .map((one) => (
                <tr key={one.use}>
                  <th scope="row">
                    {USE_WORDS[one.use]}{' '}
                    <Why of={`${USE_WORDS[one.use]}`}>{inUnits(units, one.source, one.sourceParts)}</Why>
                  </th>
                  <Three of={one.litresPerDay} units={units} />
                </tr>
              ))}
          </tbody>
        ))}
      <tbody>
        <tr className="sum">
          <th scope="row">{tx`All together ${(
            <Why of={t('all water used')}>
              {FROM_WORDS[use.from]}
              <Terms terms={use.working} units={units} />
            </Why>
          )}`}</th>
          <Three of={use.litresPerDay} units={units} />
        </tr>
        {use.notCarriedLitresPerDay.high > 0 && (
          <tr>
            <th scope="row">{t('taken where it is used, not carried')}</th>
            <Three of={use.notCarriedLitresPerDay} units={units} />
          </tr>
        )}
      </tbody>
    </table>
  );
}

/** Most days first: low use lasts longest. */
function EnduranceTable({ use, units }: { use: WaterUse; units: UnitSystem }) {
  const { grades } = use;
  const rows: { name: string; aboardL: number; days: GradeUse['enduranceDays'] }[] =
    grades === null
      ? [{ name: t('all water, drinking grade'), aboardL: use.aboardL, days: use.enduranceDays }]
      : [
          {
            name: t('drinking grade'),
            aboardL: grades.drinking.aboardL,
            days: grades.drinking.enduranceDays,
          },
          { name: t('for washing'), aboardL: grades.washing.aboardL, days: grades.washing.enduranceDays },
          { name: t('until the first ends'), aboardL: use.aboardL, days: use.enduranceDays },
        ];
  return (
    <table className="plain-table">
      <caption>{t('Days that it lasts, no supply on the way')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Water')}</th>
          <th scope="col" className="end">{tx`aboard ${volumeUnit(units)}`}</th>
          {ENDS.map((end) => (
            <th scope="col" className="end" key={end}>{tx`${worded(end)} use`}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, aboardL, days }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="end">{figureLitres(aboardL, units)}</td>
            {ENDS.map((end) => (
              <td className="end" key={end}>
                {days === null ? t('not used') : formatFigure(days[end], 1)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ReserveWords({ reserve, units }: { reserve: WaterUse['reserve']; units: UnitSystem }) {
  const { litres, days, hoursToHelp, safeL, worstLoss, holds } = reserve;
  return (
    <div>{tx`${<b>{t('Reserve:')}</b>} ${formatLitres(litres, units)}, ${formatDays(days)} of drinking grade${
      hoursToHelp === null
        ? t('; not told how long until help comes')
        : t`; help takes ${formatFigure(hoursToHelp, 1)}\u00a0hours`
    }. After the worst single loss (${worstLoss}) ${formatLitres(safeL, units)} would be left: ${holds ? t('the reserve holds.') : <b>{t('the reserve is not safe from one leak, pump or tap.')}</b>}`}</div>
  );
}

function HeatWords({ heat, units }: { heat: NonNullable<WaterUse['heat']>; units: UnitSystem }) {
  const { workRest } = heat;
  return (
    <div>{tx`${<b>{t('Heat:')}</b>} WBGT ${formatTemperature(heat.wbgtC, units)}${heat.from === 'estimate' ? t(' (estimate)') : ''}, ${SUN_WORDS[heat.sun]}, ${worded(heat.work)} work, ${heat.category === 0 ? t('below the table') : t`heat category ${heat.category} of 5`}: each person drinks ${formatFigure(heat.restFactor, 2)} times as much as in mild weather and ${formatLitres(heat.litresPerWorkHour.high, units)} more for an hour of work. ${workRest !== null && tx`Work ${formatFigure(workRest.workMinutes, 0)} minutes of an hour, rest ${formatFigure(workRest.restMinutes, 0)}. `}${<Why of={t("the heat's figures")}>{inUnits(units, heat.why, heat.whyParts)}</Why>}`}</div>
  );
}
