import type { Analysis } from '../../server/contract/analysis.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { CommodityAnswer, Todo } from '../answer/Answer.tsx';
import type { PlanStanding } from '../answer/PlanTodo.tsx';
import { TripHead, type TripHeadProps } from './TripHead.tsx';

interface PageHeadProps extends Omit<TripHeadProps, 'analysis' | 'plan'> {
  analysis: Analysis | null;
  /** The plan to go by. */
  plan: PlanReply | null;
  /** A plan is being made. */
  coming: boolean;
  standing: PlanStanding;
}

/** The answer comes first: whose trip it is, the longest stretches, what to do. */
export function PageHead({ analysis, plan, coming, standing, ...controls }: PageHeadProps) {
  const { units } = controls;
  return (
    <header className="top">
      <TripHead {...{ analysis, plan }} {...controls} />
      {analysis !== null && (
        <>
          <CommodityAnswer {...{ analysis, units, plan }} commodity="fuel" />
          <CommodityAnswer {...{ analysis, units, plan }} commodity="water" />
          <Todo {...{ analysis, units, plan, coming, standing }} />
        </>
      )}
    </header>
  );
}
