import type { Plan, WayOut } from '../../server/contract/plan.ts';

/** Which stretch makes a plan impossible, and the changes with which there is one. */
export function WaysOut({ plan, whole }: { plan: Plan; whole: boolean }) {
  const computed = plan.waysOut.filter(({ telephoneFirst }) => !telephoneFirst);
  const doubtful = plan.waysOut.filter(({ telephoneFirst }) => telephoneFirst);
  return (
    <>
      <ul>
        {plan.breaks.map(({ cause, text }) => (
          <li key={`${cause} ${text}`}>{text}</li>
        ))}
      </ul>
      <section aria-labelledby="plan-ways">
        <h3 id="plan-ways">Ways out, each reckoned again</h3>
        {whole ? (
          <>
            <Ways ways={computed} none="None was found." />
            {!plan.waysOutComplete && <p>Not all were tried: the time ran out.</p>}
          </>
        ) : (
          <p className="soft">Being tried…</p>
        )}
      </section>
      {doubtful.length > 0 && (
        <section aria-labelledby="plan-doubtful">
          <h3 id="plan-doubtful">Only after a telephone call</h3>
          <Ways ways={doubtful} none="" />
        </section>
      )}
    </>
  );
}

function Ways({ ways, none }: { ways: readonly WayOut[]; none: string }) {
  if (ways.length === 0) return <p>{none}</p>;
  return (
    <ul>
      {ways.map(({ kind, text }) => (
        <li key={`${kind} ${text}`}>{text}</li>
      ))}
    </ul>
  );
}
