import { type FormEvent, useEffect, useState } from 'react';
import type { OverpassAsk, OverpassQuestion } from '../../../server/contract/answers/overpass.ts';
import { detailsOf, type ProblemDetails, wasCalledOff } from '../../api/api.ts';
import { getOverpassQuestion } from '../../api/maps.ts';
import { Problem } from '../../kit/Problem.tsx';
import { t } from '../../language/t.ts';
import { tx } from '../../language/tx.ts';

interface OverpassPartProps {
  tripId: string;
  routeName: string;
  busy: boolean;
  onAsk: (ask: OverpassAsk) => void;
}

/** Map data of the route's corridor from an Overpass server: first what would be asked, then the asking. */
export function OverpassPart({ tripId, routeName, busy, onAsk }: OverpassPartProps) {
  const [isOpen, setIsOpen] = useState(false);
  if (!isOpen)
    return (
      <p>{tx`No file at hand: ${(
        <button type="button" disabled={busy} onClick={() => setIsOpen(true)}>
          {t('Ask Overpass for this route')}
        </button>
      )} ${<small>{t('Nothing is sent before you have seen what.')}</small>}`}</p>
    );
  return <OverpassForm {...{ tripId, routeName, busy, onAsk }} onClose={() => setIsOpen(false)} />;
}

function OverpassForm(props: OverpassPartProps & { onClose: () => void }) {
  const { tripId, routeName, busy, onAsk, onClose } = props;
  const [width, setWidth] = useState<string | null>(null);
  const [name, setName] = useState(`Corridor of ${routeName}`.slice(0, 120));
  const { question, problem } = useQuestion(tripId, width);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (question === null || name.trim() === '') return;
    onAsk({ digest: question.digest, corridorKm: question.corridorKm, name: name.trim() });
    onClose();
  };
  return (
    <form className="overpass" aria-label={t('What Overpass would be asked')} onSubmit={submit}>
      {problem !== null && <Problem problem={problem} />}
      {question === null && problem === null && <p>{t('Looking what would be asked…')}</p>}
      {question !== null && <QuestionWords question={question} />}
      <label>
        {t('Kilometres on either side of the route')}{' '}
        <input
          inputMode="decimal"
          size={4}
          value={width ?? String(question?.corridorKm ?? '')}
          onChange={({ target }) => setWidth(target.value)}
        />
      </label>
      <label>
        {t('Keep it as')}{' '}
        <input value={name} maxLength={120} required onChange={({ target }) => setName(target.value)} />
      </label>
      <div className="dialog-actions">
        <button type="submit" disabled={busy || question === null}>
          {t('Send these queries')}
        </button>
        <button type="button" onClick={onClose}>
          {t('Do not ask')}
        </button>
      </div>
    </form>
  );
}

function QuestionWords({ question }: { question: OverpassQuestion }) {
  const { address, userAgent, requests, answered, query } = question;
  return (
    <>
      <p>{tx`Nothing has been sent yet. ${requests - answered} queries would go to ${<b>{address}</b>}, one at a time, each with a box along your route in it${answered > 0 && t`; ${answered} more were answered in the last days`}. The server sees where your route runs, and that ${userAgent} asks.${
        !userAgent.includes('(+') &&
        t(' Whom to write to it is not told: whoever starts Drystage can name an address (DRYSTAGE_CONTACT).')
      }`}</p>
      <details>
        <summary>{t('The text of the first query')}</summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and so by the keyboard too */}
        <pre tabIndex={0}>{query}</pre>
      </details>
    </>
  );
}

/** Typing is looked at after so long, ms. */
const QUIET_MS = 400;

/** What would be asked for a corridor of that width; of the trip's own where none is typed. */
function useQuestion(tripId: string, width: string | null) {
  const [found, setFound] = useState<{ question: OverpassQuestion | null; problem: ProblemDetails | null }>({
    question: null,
    problem: null,
  });
  useEffect(() => {
    const control = new AbortController();
    // What is shown is what is sent: while another width is typed there is nothing to send.
    setFound({ question: null, problem: null });
    const look = () =>
      getOverpassQuestion(
        tripId,
        width === null ? null : Number(width.replace(',', '.')),
        control.signal,
      ).then(
        (question) => setFound({ question, problem: null }),
        (error: unknown) => {
          if (!wasCalledOff(error)) setFound({ question: null, problem: detailsOf(error) });
        },
      );
    const timer = setTimeout(() => void look(), width === null ? 0 : QUIET_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [tripId, width]);
  return found;
}
