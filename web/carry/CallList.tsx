import type { CallFirst } from '../../server/contract/whatif.ts';
import { useForm } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatAtKm, formatLitres } from '../units/units.ts';
import { contentWord } from '../words/plan-words.ts';
import { inUnits } from '../words/said.ts';
import { EVIDENCE_WORDS, VERDICT_WORDS } from '../words/words.ts';

interface CallListProps {
  calls: readonly CallFirst[];
  /** Notes a stop as confirmed today, for all that it gives. */
  onChecked: (call: CallFirst) => void;
  /** ISO date. */
  today: string;
}

/** What to check before leaving, that first without which most fails; ticking one off notes it as confirmed today. */
export function CallList({ calls, onChecked, today }: CallListProps) {
  const { analysis, units } = useForm();
  const { kind } = analysis.rig.fuel;
  return (
    <section aria-labelledby="plan-calls" className="check-list">
      <h3 id="plan-calls">{t('To check before leaving')}</h3>
      {calls.length === 0 ? (
        <p>{t('No supply on the way is used.')}</p>
      ) : (
        <ol>
          {calls.map((call) => (
            <li key={`${call.id} ${call.atKm}`}>
              <label>
                <input
                  type="checkbox"
                  checked={call.confirmation?.on === today}
                  disabled={call.confirmation?.on === today}
                  onChange={() => onChecked(call)}
                />{' '}
                <b>{call.name ?? inUnits(units, call.where, call.whereParts)}</b>
              </label>
              {call.name === null ? '' : `, ${formatAtKm(call.atKm, units)}`}, {knownWords(call)}.{' '}
              {call.confirmation?.againFrom != null && (
                <strong className="words-unknown">{tx`Confirm again before leaving, from ${call.confirmation.againFrom} on. `}</strong>
              )}
              {call.fails.map(({ commodity, verdict, coverL }) => (
                <span
                  key={commodity}
                >{tx`Without its ${contentWord(commodity, kind)} ${<strong className={`words-${verdict}`}>{VERDICT_WORDS[verdict]}</strong>}${coverL === 0 ? '' : t`, ${formatLitres(coverL, units)} short of the reserve`}. `}</span>
              ))}
              <span className="second">
                <Reach call={call} />
              </span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

/** How well it is known: by whose word, or by what the map says. */
function knownWords({ evidence, confirmation, isOwn }: CallFirst): string {
  if (confirmation === null) return isOwn ? t('noted by you') : EVIDENCE_WORDS[evidence];
  const { on, by, words } = confirmation;
  return t`confirmed on ${on}${by === undefined ? '' : t` by ${by}`}${words === undefined ? '' : ` (“${words}”)`}`;
}

/** Only http and https addresses are made links: tags are typed by anybody. */
const WEB_ADDRESS = /^https?:\/\//i;

function Reach({ call }: { call: CallFirst }) {
  const { phone, website, openingHours, isOwn, seenOn } = call;
  return (
    <>
      {phone !== null
        ? t`telephone ${phone}`
        : isOwn
          ? t('your own: see that it is there')
          : t('no telephone known')}
      {website !== null && (
        <>
          ,{' '}
          {WEB_ADDRESS.test(website) ? (
            <a href={website} target="_blank" rel="noreferrer">
              {website}
            </a>
          ) : (
            website
          )}
        </>
      )}
      {openingHours !== null && t`, hours ${openingHours}`}
      {!isOwn && (seenOn === null ? t(', last edit not known') : t`, last edited or checked ${seenOn}`)}
    </>
  );
}
