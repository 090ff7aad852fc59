import { useState } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { FieldNotes } from '../notes/FieldNotes.tsx';
import type { Focus } from '../state/focus.ts';
import { assumedAt, type Said } from '../state/said.ts';
import { formatAtKm, formatHeight, type UnitSystem } from '../units/units.ts';
import { fieldWords, withoutPaths } from '../words/field-words.ts';
import { inUnits, saidIn } from '../words/said.ts';
import { SureList } from './SureList.tsx';

/** More than this is opened on demand (ours). */
const SKIPPED_AT_FIRST = 30;

interface NotesPanelProps {
  analysis: Analysis;
  notice: string | null;
  units: UnitSystem;
  said: Said;
  place: Focus['place'];
  onEdit: (said: Said) => void;
}

export function NotesPanel({ analysis, notice, units, said, place, onEdit }: NotesPanelProps) {
  const [allSkipped, setAllSkipped] = useState(false);
  const skipped = allSkipped ? analysis.skipped : analysis.skipped.slice(0, SKIPPED_AT_FIRST);
  const more = analysis.skipped.length - skipped.length;
  const { longestStepKm, vertices, parts } = analysis.route;
  return (
    <div className="notes">
      <FieldNotes place={place} />

      <h3>{t('Before you go')}</h3>
      <ul>
        {analysis.standing.map(({ code, text }) => (
          <li key={code}>{text}</li>
        ))}
      </ul>

      <h3>{t('About this route and its data')}</h3>
      <ul>
        {analysis.extracts.map(({ source, asOf, attribution, licence }) => (
          <li key={source}>
            {source}: {asOf === null ? t('of unknown date') : t`as of ${asOf.slice(0, 10)}`}.{' '}
            {[attribution, licence].filter((text) => text !== null).join(', ') ||
              t('It does not say whose data it is.')}
          </li>
        ))}
      </ul>
      {analysis.cautions.length === 0 ? (
        <p>{t('Nothing further to warn of.')}</p>
      ) : (
        <ul>
          {analysis.cautions.map((caution) => (
            <li key={`${caution.code} ${caution.fromKm ?? ''} ${caution.text}`}>
              {caution.fromKm !== undefined && (
                <b>
                  {formatAtKm(caution.fromKm, units)}
                  {caution.toKm === undefined || caution.toKm === caution.fromKm
                    ? ''
                    : t` to ${formatAtKm(caution.toKm, units)}`}
                  :{' '}
                </b>
              )}
              {withoutPaths(saidIn(units, caution))}
            </li>
          ))}
        </ul>
      )}
      <p className="soft">{tx`The route has ${vertices} points in ${parts} ${plural(parts, t('part'), t('parts'))}; its longest straight step is ${formatHeight(longestStepKm * 1000, units)}.`}</p>

      <h3>{t('What was assumed')}</h3>
      {analysis.assumptions.length === 0 ? (
        <p>{t('Nothing: every quantity was given.')}</p>
      ) : (
        <dl>
          {analysis.assumptions.map(({ path, value, valueParts, why, whyParts }) => (
            <div key={path}>
              <dt>{fieldWords(assumedAt(path).path, units)}</dt>
              <dd>
                {inUnits(units, value, valueParts)}: {inUnits(units, why, whyParts)}
              </dd>
            </div>
          ))}
        </dl>
      )}

      <SureList {...{ said, units, onEdit }} />

      <h3>{tx`Map objects passed over: ${analysis.skipped.length}`}</h3>
      {analysis.skipped.length > 0 && (
        <ul>
          {skipped.map(({ id, reason }) => (
            <li key={`${id} ${reason}`}>
              <b>{id}</b>: {reason}
            </li>
          ))}
        </ul>
      )}
      {more > 0 && (
        <button type="button" onClick={() => setAllSkipped(true)}>{tx`Show the other ${more}`}</button>
      )}

      <h3>{t('Where the data comes from')}</h3>
      <Sources notice={notice} />
    </div>
  );
}

/** Whose data it is, and what that asks of whoever passes a plan on. */
const Sources = ({ notice }: { notice: string | null }) => (
  <p>{tx`${
    notice === null
      ? tx`Supplies, roads and places: © OpenStreetMap contributors, under the ${(
          <a href="https://opendatacommons.org/licenses/odbl/" rel="noreferrer">
            {t('Open Database License')}
          </a>
        )} (${(
          <a href="https://www.openstreetmap.org/copyright" rel="noreferrer">
            {t('copyright')}
          </a>
        )}). A plan made from them and passed on must say so.`
      : tx`${notice} Its data is made up, in the form of OpenStreetMap's.`
  } World outline: Natural Earth, public domain. Your files stay on the machine that runs Drystage.`}</p>
);
