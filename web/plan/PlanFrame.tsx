import { type ReactNode, useEffect, useState } from 'react';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { Problem } from '../kit/Problem.tsx';
import type { Planned } from '../state/use-plan.ts';
import './plan.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface PlanFrameProps {
  planned: Planned;
  children: (reply: PlanReply) => ReactNode;
}

/** What is said while a plan is made, when it could not be, and about the one that is shown. */
export function PlanFrame({ planned, children }: PlanFrameProps) {
  const { reply, stale, slowSince, stopped, problem, onStop, onAgain } = planned;
  const slow = slowSince !== null;
  return (
    <div className={stale && reply !== null ? 'plan plan-stale' : 'plan'} data-plan={planState(planned)}>
      <div className="plan-work soft">
        <span role="status">{workWords(planned)}</span>
        {slow && <Seconds since={slowSince} />}
        {(slow || stopped) && (
          <button type="button" onClick={stopped ? onAgain : onStop}>
            {stopped ? t('Go on') : t('Stop')}
          </button>
        )}
      </div>
      {problem !== null && (
        <>
          <Problem problem={problem} before={problemWords(planned)} />
          <button type="button" className="plan-again" onClick={onAgain}>
            {t('Try again')}
          </button>
        </>
      )}
      <p role="status" className="plan-outcome" hidden={outcomeWords(planned) === ''}>
        {outcomeWords(planned)}
      </p>
      {reply !== null && children(reply)}
    </div>
  );
}

/** Seconds that have passed: for the eye only, a reader of screens would be told each of them. */
function Seconds({ since }: { since: number }) {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const clock = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(clock);
  }, []);
  return <span aria-hidden="true">{tx`${Math.max(0, Math.round((now - since) / 1000))} s`}</span>;
}

function workWords({ reply, stale, slowSince, stopped, searching }: Planned): string {
  const made = reply !== null && !stale;
  if (slowSince !== null && made && searching)
    return t('Not proven yet: a good plan, still searching for a better one…');
  if (slowSince !== null) return made ? t('Ways out and safety against one failure…') : t('Plan…');
  if (!stopped) return '';
  if (made && searching) return t('Stopped: what is shown is a good plan, not proven to be the best.');
  if (made) return t('Stopped: ways out and safety against one failure were not tried.');
  return reply === null
    ? t('Stopped: there is no plan yet.')
    : t('Stopped: what is shown is the plan of earlier figures.');
}

/** The advice never changes in silence. */
function outcomeWords({ stale, outcome }: Planned): string {
  if (stale || outcome === null) return '';
  return outcome === 'changed'
    ? t('The plan has changed: a better one than the one shown first was found. Go by this one.')
    : t('The plan shown first is confirmed: no better one was found.');
}

function problemWords({ reply, stale, problem }: Planned): string {
  if (problem?.code === 'not-found') return t('The server no longer has the route; it is sent once more.');
  if (!stale) return t('Ways out and safety against one failure could not be tried.');
  return reply === null ? t('Not planned.') : t('Not planned; what is shown is the plan of earlier figures.');
}

const planState = ({ reply, stale, searching, whole, stopped, problem }: Planned): string => {
  if (problem !== null) return 'refused';
  if (stopped) return 'stopped';
  if (reply === null || stale) return 'working';
  if (searching) return 'searching';
  return whole ? 'whole' : 'plain';
};
