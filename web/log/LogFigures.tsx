import type { FuelLog, LogRates, LogResult, WaterLog } from '../../server/contract/answers/log.ts';
import { Why } from '../kit/Why.tsx';
import { type QuantityKind, unitOf } from '../units/conversions.ts';
import { fieldText } from '../units/quantities.ts';
import {
  distanceUnit,
  figureKm,
  figureLitres,
  formatFigure,
  type UnitSystem,
  volumeUnit,
} from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import '../table/plain-table.css';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { saidIn } from '../words/said.ts';

const ENDS = ['low', 'typical', 'high'] as const;

const rateIn = (value: number, kind: QuantityKind, units: UnitSystem): string =>
  formatFigure(Number(fieldText(value, kind, units)), 1);

/** What a log taught: three rates, how they were come by, and every interval or line, outliers marked and not dropped. */
export function LogFigures({ learned, units }: { learned: LogResult; units: UnitSystem }) {
  const fuel = learned.kind === 'fuel';
  const rates = fuel ? learned.litresPer100Km : learned.crew.litresPerDay;
  return (
    <>
      <Rates rates={rates} kind={fuel ? 'fuelUse' : 'waterUse'} units={units} learned={learned} />
      {learned.cautions.length > 0 && (
        <ul>
          {learned.cautions.map((caution) => (
            <li key={`${caution.code} ${caution.text}`}>{withoutPaths(saidIn(units, caution))}</li>
          ))}
        </ul>
      )}
      {learned.kind === 'fuel' ? (
        <Intervals log={learned} units={units} />
      ) : (
        <Entries log={learned} units={units} />
      )}
      {learned.unreadColumns.length > 0 && (
        <p className="soft">{tx`Columns not looked at: ${learned.unreadColumns.join(', ')}.`}</p>
      )}
    </>
  );
}

function Rates(props: { rates: LogRates; kind: QuantityKind; units: UnitSystem; learned: LogResult }) {
  const { rates, kind, units, learned } = props;
  return (
    <div>{tx`${<b>{tx`${ENDS.map((end) => rateIn(rates[end], kind, units)).join(', ')} ${unitOf(kind, units)}`}</b>} (low, typical, high${
      learned.kind === 'water'
        ? t`, for ${learned.crew.people} ${plural(learned.crew.people, t('person'), t('people'))}`
        : ''
    }) from ${learned.lines} lines of ${learned.source}. ${(
      <Why of={t('the rates learned')}>
        {learned.method.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Why>
    )}`}</div>
  );
}

function Intervals({ log, units }: { log: FuelLog; units: UnitSystem }) {
  return (
    <table className="plain-table">
      <caption>{tx`From full tank to full tank: ${log.intervals.length}`}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Lines')}</th>
          <th scope="col" className="end">
            {distanceUnit(units)}
          </th>
          <th scope="col" className="end">
            {volumeUnit(units)}
          </th>
          <th scope="col" className="end">
            {unitOf('fuelUse', units)}
          </th>
          <th scope="col">{t('Notes')}</th>
        </tr>
      </thead>
      <tbody>
        {log.intervals.map((one) => (
          <tr key={one.fromLine}>
            <th scope="row">{tx`${one.fromLine} to ${one.toLine}`}</th>
            <td className="end">{figureKm(one.km, units)}</td>
            <td className="end">{figureLitres(one.litres, units)}</td>
            <td className="end">{rateIn(one.litresPer100Km, 'fuelUse', units)}</td>
            <td>
              {one.outlier && <strong>{t('outlier ')}</strong>}
              {[one.surface, ...one.notes].filter((each) => each !== null).join('; ')}
            </td>
          </tr>
        ))}
        {log.leftOut.map((one) => (
          <tr key={`left out ${one.fromLine} ${one.code}`}>
            <th scope="row">
              {one.fromLine === one.toLine ? one.fromLine : t`${one.fromLine} to ${one.toLine}`}
            </th>
            <td colSpan={4} className="soft">{tx`no rate: ${saidIn(units, one)}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Entries({ log, units }: { log: WaterLog; units: UnitSystem }) {
  return (
    <table className="plain-table">
      <caption>{tx`Lines of the log: ${log.entries.length}`}</caption>
      <thead>
        <tr>
          <th scope="col">{t('From')}</th>
          <th scope="col" className="end">
            {volumeUnit(units)}
          </th>
          <th scope="col" className="end">
            {t('people')}
          </th>
          <th scope="col" className="end">
            {t('days')}
          </th>
          <th scope="col" className="end">{tx`${volumeUnit(units)} a person, day`}</th>
          <th scope="col">{t('Notes')}</th>
        </tr>
      </thead>
      <tbody>
        {log.entries.map((one) => (
          <tr key={one.line}>
            <th scope="row">{one.date}</th>
            <td className="end">{figureLitres(one.litres, units)}</td>
            <td className="end">{one.people}</td>
            <td className="end">{formatFigure(one.days, 1)}</td>
            <td className="end">{rateIn(one.litresPerPersonDay, 'volume', units)}</td>
            <td>
              {one.outlier && <strong>{t('outlier ')}</strong>}
              {one.note}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
