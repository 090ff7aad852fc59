import type { ReactNode } from 'react';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { Problem } from '../open/Problem.tsx';
import type { UnitSystem } from '../units.ts';
import type { Planned } from './use-plan.ts';
import './plan.css';

interface PlanFrameProps {
  planned: Planned;
  units: UnitSystem;
  children: (reply: PlanReply) => ReactNode;
}

/** What is said while a plan is made, when it could not be, and about the one that is shown. */
export function PlanFrame({ planned, units, children }: PlanFrameProps) {
  const { reply, stale, slow, whole, problem } = planned;
  return (
    <div className={stale && reply !== null ? 'plan plan-stale' : 'plan'} data-plan={planState(planned)}>
      <p className="plan-work soft" role="status">
        {slow && (reply === null || stale ? 'Working…' : whole ? '' : 'Working on the rest…')}
      </p>
      {problem !== null && (
        <Problem
          problem={problem}
          before={
            stale
              ? 'Not planned; what is shown is the plan before, if there was one.'
              : 'Ways out and the plan against one failure could not be tried.'
          }
        />
      )}
      {reply !== null && (
        <>
          {units !== 'metric' && (
            <p className="soft">Whole sentences of the reckoning keep kilometres and litres.</p>
          )}
          {children(reply)}
        </>
      )}
    </div>
  );
}

const planState = ({ reply, stale, whole, problem }: Planned): string => {
  if (problem !== null) return 'refused';
  if (reply === null || stale) return 'working';
  return whole ? 'whole' : 'plain';
};
