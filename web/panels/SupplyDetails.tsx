import type { Passing } from '../../server/contract/analysis.ts';
import type { Arrival } from '../../server/contract/pace.ts';
import { useForm } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { CorrectionForm } from '../notes/CorrectionForm.tsx';
import type { Finding } from '../notes/findings.ts';
import { isOnMap, objectThen } from '../notes/object-then.ts';
import { ReportForm } from '../notes/ReportForm.tsx';
import { formatAtKm, formatFigure, formatKm, type UnitSystem } from '../units/units.ts';
import { formatTimeSpan } from '../words/local-time.ts';
import { saidIn } from '../words/said.ts';
import { EVIDENCE_WORDS, WATER_CLASS_WORDS } from '../words/words.ts';
import { DepthForm } from './DepthForm.tsx';
import { SaltForm } from './SaltForm.tsx';

interface SupplyDetailsProps {
  passing: Passing;
  units: UnitSystem;
  /** Marked by the user as safe for skin, to fill what is kept for washing. */
  safeForSkin: boolean;
  onFound: (passing: Passing, finding: Finding) => void;
}

/** What is known of one supply at one passing, and buttons for what the user found out. */
export function SupplyDetails({ passing, units, safeForSkin, onFound }: SupplyDetailsProps) {
  const { analysis, said } = useForm();
  const noted = said.trip.waterNotes?.find(({ id }) => id === passing.id);
  const was = isOnMap(passing) ? { was: objectThen(passing, analysis.passings) } : {};
  return (
    <div className="supply-details">
      <dl>
        <dt>{t('On the map')}</dt>
        <dd>{tx`${[passing.id, ...passing.alsoIds].join(', ')} at ${passing.lat.toFixed(5)}, ${passing.lon.toFixed(5)}`}</dd>
        <dt>{t('From the route')}</dt>
        <dd>{tx`${formatAtKm(passing.atKm, units)}, ${formatKm(passing.offRouteKm, units)} off in a straight line, ${formatKm(passing.detourKm, units)} of driving one way`}</dd>
        <dt>{t('Evidence')}</dt>
        <dd>{EVIDENCE_WORDS[passing.evidence]}</dd>
        {passing.waterClass !== undefined && (
          <>
            <dt>{t('Water')}</dt>
            <dd>{WATER_CLASS_WORDS[passing.waterClass]}</dd>
          </>
        )}
        {passing.arrival != null && (
          <>
            <dt>{t('Reached')}</dt>
            <dd>{arrivalText(passing.arrival)}</dd>
          </>
        )}
        {passing.reasons.length > 0 && (
          <>
            <dt>{passing.counts ? t('Mind') : t('Why it is not relied on')}</dt>
            {passing.reasons.map((reason) => (
              <dd key={reason.code}>{saidIn(units, reason)}</dd>
            ))}
          </>
        )}
      </dl>
      <ReportForm onReport={(report) => onFound(passing, { report, ...was })} />
      <CorrectionForm
        {...{ passing, units }}
        onCorrected={(correction) => onFound(passing, { correction, ...was })}
      />
      {passing.commodity === 'water' && (
        <>
          <p className="actions">{tx`Tested for salt today? ${(
            <button type="button" onClick={() => onFound(passing, 'not-salty')}>
              {t('Not salty')}
            </button>
          )}${(
            <button type="button" onClick={() => onFound(passing, 'salty')}>
              {t('Salty')}
            </button>
          )}`}</p>
          <SaltForm onMeasured={(measure) => onFound(passing, measure)} />
          <DepthForm
            units={units}
            noted={noted?.depthM ?? null}
            isTasted={noted !== undefined}
            onDepth={(depth) => onFound(passing, depth)}
          />
          {passing.waterClass !== 'drinking' && (
            <p className="actions">
              <button
                type="button"
                aria-pressed={safeForSkin}
                onClick={() => onFound(passing, safeForSkin ? 'not-for-skin' : 'safe-for-skin')}
              >
                {t('Safe for skin: fills what is kept for washing')}
              </button>
            </p>
          )}
        </>
      )}
    </div>
  );
}

/** When it is reached, and whether it is open then: shut means waiting, not a supply lost. */
function arrivalText({ earliest, latest, open, waitHours, text }: Arrival): string {
  const when = formatTimeSpan({ earliest, latest });
  const hours =
    open === true
      ? 'open'
      : open === false
        ? waitHours === null
          ? 'shut'
          : t`shut: ${formatFigure(waitHours, 1)}\u00a0h to wait at most`
        : t('not known whether it is open');
  return `${when}, ${hours}${text === null ? '' : `; ${text}`}`;
}
