import { useMemo } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { ProblemDetails } from '../api.ts';
import { PlanFrame } from '../plan/PlanFrame.tsx';
import type { Planned } from '../plan/use-plan.ts';
import { FormContext } from '../rig/form-context.ts';
import type { Said } from '../rig/said.ts';
import type { UnitSystem } from '../units.ts';
import { CallList } from './CallList.tsx';
import { Legs } from './Legs.tsx';
import { OneFailureWords } from './OneFailureWords.tsx';
import { PlanLimits } from './PlanLimits.tsx';
import { PlanWords } from './PlanWords.tsx';
import { RestsOn } from './RestsOn.tsx';
import { WaysOut } from './WaysOut.tsx';

interface CarryPanelProps {
  planned: Planned;
  analysis: Analysis;
  said: Said;
  units: UnitSystem;
  problem: ProblemDetails | null;
  onEdit: (said: Said) => void;
}

/** Where to fill, what to carry over which stretch, when to pour; or why nothing will do, and what would. */
export function CarryPanel({ planned, analysis, said, units, problem, onEdit }: CarryPanelProps) {
  const form = useMemo(
    () => ({ analysis, said, units, problem, onEdit }),
    [analysis, said, units, problem, onEdit],
  );
  return (
    <>
      <PlanFrame planned={planned} units={units}>
        {({ plan, whatIf }) => (
          <>
            <Verdict plan={plan} />
            {plan.status === 'none' && <WaysOut plan={plan} whole={planned.whole} />}
            {plan.status === 'found' && (
              <>
                <PlanWords plan={plan} analysis={analysis} units={units} />
                <RestsOn plan={plan} units={units} />
                <Legs plan={plan} analysis={analysis} units={units} />
                <OneFailureWords plan={plan} whole={planned.whole} analysis={analysis} units={units} />
              </>
            )}
            <CallList calls={whatIf.callFirst} analysis={analysis} units={units} />
          </>
        )}
      </PlanFrame>
      <FormContext.Provider value={form}>
        <PlanLimits />
      </FormContext.Provider>
    </>
  );
}

function Verdict({ plan }: { plan: Plan }) {
  if (plan.status === 'out-of-time') {
    return (
      <p className="lead">
        <b>No plan was found in the time there was.</b> Whether there is one is not known.
      </p>
    );
  }
  if (plan.status === 'none') {
    return (
      <p className="lead">
        <b className="words-short">There is no plan that keeps the reserve.</b>
      </p>
    );
  }
  const stops = plan.stops.filter(({ used }) => used).length;
  const { fuel, water } = plan.cans;
  const cans = fuel + water === 0 ? 'no cans' : `${count(fuel, 'fuel can')} and ${count(water, 'water can')}`;
  return (
    <p className="lead">
      <b>
        {stops === 0 ? 'No stop is needed' : `Fill at ${count(stops, 'stop')}`}, with {cans}.
      </b>{' '}
      The reserve is kept all the way, at the rate that the verdict uses.
    </p>
  );
}

const count = (of: number, what: string): string => `${of} ${what}${of === 1 ? '' : 's'}`;
