import type { Analysis } from '../../server/contract/analysis.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { CommodityAnswer, Todo } from '../answer/Answer.tsx';
import { TripHead, type TripHeadProps } from './TripHead.tsx';

interface PageHeadProps extends Omit<TripHeadProps, 'analysis'> {
  analysis: Analysis | null;
  plan: PlanReply | null;
}

/** The answer comes first: whose trip it is, the longest stretches, what to do. */
export function PageHead({ analysis, plan, ...controls }: PageHeadProps) {
  const { units } = controls;
  return (
    <header className="top">
      <TripHead analysis={analysis} {...controls} />
      {analysis !== null && (
        <>
          <CommodityAnswer analysis={analysis} units={units} commodity="fuel" />
          <CommodityAnswer analysis={analysis} units={units} commodity="water" />
          <Todo analysis={analysis} {...{ units, plan }} />
        </>
      )}
    </header>
  );
}
