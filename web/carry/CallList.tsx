import type { Analysis } from '../../server/contract/analysis.ts';
import type { CallFirst } from '../../server/contract/whatif.ts';
import { formatAtKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { contentWord } from '../words/plan-words.ts';
import { EVIDENCE_WORDS, VERDICT_WORDS } from '../words/words.ts';

interface CallListProps {
  calls: readonly CallFirst[];
  analysis: Analysis;
  units: UnitSystem;
}

/** Which stops to ask before leaving, the one first without which most fails. */
export function CallList({ calls, analysis, units }: CallListProps) {
  const { kind } = analysis.rig.fuel;
  return (
    <section aria-labelledby="plan-calls">
      <h3 id="plan-calls">Telephone first</h3>
      {calls.length === 0 ? (
        <p>No supply on the way is used.</p>
      ) : (
        <ol>
          {calls.map((call) => (
            <li key={`${call.id} ${call.atKm}`}>
              <b>{call.name ?? call.kind}</b>, {formatAtKm(call.atKm, units)}, {EVIDENCE_WORDS[call.evidence]}
              .{' '}
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

/** Only http and https addresses are made links: tags are typed by anybody. */
const WEB_ADDRESS = /^https?:\/\//i;

function Reach({ call }: { call: CallFirst }) {
  const { phone, website, openingHours } = call;
  return (
    <>
      {phone === null ? 'no telephone known' : `telephone ${phone}`}
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
    </>
  );
}
