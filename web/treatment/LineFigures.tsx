import type { TreatmentReport } from '../../server/contract/treatment.ts';
import { Terms } from '../kit/Terms.tsx';
import { Why } from '../kit/Why.tsx';
import { formatLitres, type UnitSystem } from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import { inUnits, saidIn } from '../words/said.ts';
import { LineChain } from './LineChain.tsx';
import { LogBars } from './LogBars.tsx';
import { SOURCE_WORDS } from './line-steps.ts';
import '../table/plain-table.css';
import './treatment.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface LineFiguresProps {
  report: TreatmentReport;
  hasPump: boolean;
  units: UnitSystem;
}

/** What the line does: drawn, against its target, for each kind of source, and how long its cartridges last. */
export function LineFigures({ report, hasPump, units }: LineFiguresProps) {
  return (
    <section className="line-figures" aria-label={t('What the treatment line does')}>
      <LineChain report={report} hasPump={hasPump} units={units} />
      <LogBars report={report} />
      <SourceTable report={report} units={units} />
      {report.cartridges.length > 0 && <CartridgeTable report={report} units={units} />}
      {report.cautions.length > 0 && (
        <ul>
          {report.cautions.map((caution) => (
            <li key={`${caution.code} ${caution.text}`}>{withoutPaths(saidIn(units, caution))}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function SourceTable({ report, units }: { report: TreatmentReport; units: UnitSystem }) {
  return (
    <table className="plain-table">
      <caption>{t('What it makes fit to drink, without a note of yours on the point')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Source')}</th>
          <th scope="col">{t('Fit')}</th>
          <th scope="col">{t('Why')}</th>
        </tr>
      </thead>
      <tbody>
        {alikeSources(report.sources).map((alike) => (
          <tr key={alike.key}>
            <th scope="row">
              {alike.sources.map(({ kind, hazard }) => (
                <div key={kind}>
                  {SOURCE_WORDS[kind]}{' '}
                  <Why
                    of={t`what is expected of a ${SOURCE_WORDS[kind]}`}
                  >{tx`${hazard.microbial ? t('germs') : t('no germs')}, salt ${presence(hazard.salt)}, chemicals ${presence(hazard.chemicals)}, ${hazard.turbidityNtu} NTU: ${hazard.why}`}</Why>
                </div>
              ))}
            </th>
            <td>{alike.treatable ? <b>{t('yes')}</b> : t('answer|no')}</td>
            <td>
              {alike.reasons
                .map((reason, place) => inUnits(units, reason, alike.reasonsParts?.[place]))
                .join('; ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type Source = TreatmentReport['sources'][number];

/** Kinds of source that have their verdict and the reasons for it in common. */
interface AlikeSources extends Pick<Source, 'treatable' | 'reasons' | 'reasonsParts'> {
  key: string;
  sources: Source[];
}

/** Kinds of source with the same verdict for the same reasons, together; those that are made fit first. */
function alikeSources(sources: readonly Source[]): AlikeSources[] {
  const groups = new Map<string, AlikeSources>();
  for (const source of sources) {
    const key = `${source.treatable ? 0 : 1} ${source.reasons.join('; ')}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { ...source, key, sources: [source] });
    else group.sources.push(source);
  }
  return [...groups.values()].sort((a, b) => Number(b.treatable) - Number(a.treatable));
}

const presence = (value: 'no' | 'unknown' | 'yes'): string =>
  value === 'unknown' ? t('not known') : value === 'yes' ? t('yes') : t('answer|no');

function CartridgeTable({ report, units }: { report: TreatmentReport; units: UnitSystem }) {
  return (
    <table className="plain-table">
      <caption>{t('Through each cartridge on this trip')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('Cartridge')}</th>
          <th scope="col" className="end">
            {t('this trip')}
          </th>
          <th scope="col" className="end">
            {t('left after it')}
          </th>
        </tr>
      </thead>
      <tbody>
        {report.cartridges.map((one) => (
          <tr key={one.name}>
            <th scope="row">
              {one.name}{' '}
              {one.working.length > 0 && (
                <Why of={t`the litres through ${one.name}`}>
                  <Terms terms={one.working} units={units} />
                </Why>
              )}
            </th>
            <td className="end">{formatLitres(one.litres, units)}</td>
            <td className="end">
              {one.leftLitres === null ? (
                t('life not told')
              ) : one.leftLitres < 0 ? (
                <strong className="error">{tx`${formatLitres(-one.leftLitres, units)} too little`}</strong>
              ) : (
                formatLitres(one.leftLitres, units)
              )}
              {one.backwash && <span className="second">{t('washes backwards')}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
