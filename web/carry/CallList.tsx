import type { CallFirst } from '../../server/contract/whatif.ts';
import { useForm } from '../form/form-context.ts';
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
      <h3 id="plan-calls">To check before leaving</h3>
      {calls.length === 0 ? (
        <p>No supply on the way is used.</p>
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
                <strong className="words-unknown">
                  Confirm again before leaving, from {call.confirmation.againFrom} on.{' '}
                </strong>
              )}
              {call.fails.map(({ commodity, verdict, coverL }) => (
                <span key={commodity}>
                  Without its {contentWord(commodity, kind)}{' '}
                  <strong className={`words-${verdict}`}>{VERDICT_WORDS[verdict]}</strong>
                  {coverL === 0 ? '' : `, ${formatLitres(coverL, units)} short of the reserve`}.{' '}
                </span>
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
  if (confirmation === null) return isOwn ? 'noted by you' : EVIDENCE_WORDS[evidence];
  const { on, by, words } = confirmation;
  return `confirmed on ${on}${by === undefined ? '' : ` by ${by}`}${words === undefined ? '' : ` (“${words}”)`}`;
}

/** Only http and https addresses are made links: tags are typed by anybody. */
const WEB_ADDRESS = /^https?:\/\//i;

function Reach({ call }: { call: CallFirst }) {
  const { phone, website, openingHours, isOwn, seenOn } = call;
  return (
    <>
      {phone !== null
        ? `telephone ${phone}`
        : isOwn
          ? 'your own: see that it is there'
          : 'no telephone known'}
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
      {openingHours !== null && `, hours ${openingHours}`}
      {!isOwn && (seenOn === null ? ', last edit not known' : `, last edited or checked ${seenOn}`)}
    </>
  );
}
