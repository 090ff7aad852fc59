import type { Commodity } from '../../server/contract/common.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { useForm } from '../form/form-context.ts';
import { andAll } from '../language/codes.ts';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { withChecked } from '../notes/findings.ts';
import { PlanFrame } from '../plan/PlanFrame.tsx';
import type { Focus } from '../state/focus.ts';
import { type Planned, restOf } from '../state/use-plan.ts';
import type { UnitSystem } from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';
import { today } from '../words/local-time.ts';
import { cansFor, hasUnknown } from '../words/plan-words.ts';
import { inUnits } from '../words/said.ts';
import { CallList } from './CallList.tsx';
import { LaidSupplies } from './LaidSupplies.tsx';
import { Legs } from './Legs.tsx';
import { OneFailureWords } from './OneFailureWords.tsx';
import { PlanLimits } from './PlanLimits.tsx';
import { PlanWords } from './PlanWords.tsx';
import { RestsOn } from './RestsOn.tsx';
import { Sheet } from './Sheet.tsx';
import { StopsTable } from './StopsTable.tsx';
import { TakeAlong } from './TakeAlong.tsx';
import { Breaks, WaysOut } from './WaysOut.tsx';

interface CarryPanelProps {
  /** Of the analysis, by which the server knows it. */
  id: string;
  planned: Planned;
  onFocus: (next: Partial<Focus>) => void;
}

/** Where to fill, what to carry over which stretch, when to pour; or why nothing will do, and what would. */
export function CarryPanel({ id, planned, onFocus }: CarryPanelProps) {
  const { analysis, said, units, onEdit } = useForm();
  const day = today();
  const rest = restOf(planned);
  return (
    <>
      <PlanFrame planned={planned}>
        {({ plan, whatIf }) => {
          const found = plan.status === 'found';
          const more = plan.getCans.fuel + plan.getCans.water > 0;
          return (
            <>
              {more && <GetCans plan={plan} rig={analysis.rig} />}
              <Verdict plan={plan} onAgain={planned.onAgain} />
              <PartlyKnown plan={plan} units={units} />
              {plan.status === 'none' && <Breaks plan={plan} kind={analysis.rig.fuel.kind} units={units} />}
              {found && (
                <Sheet
                  caption={t('Halt by halt')}
                  halts={plan.sheet}
                  totals={plan.totals}
                  kind={analysis.rig.fuel.kind}
                  units={units}
                />
              )}
              {found && <PlanWords plan={plan} analysis={analysis} units={units} />}
              {(plan.status === 'none' || more) && <WaysOut plan={plan} {...{ rest, units }} />}
              <TakeAlong id={id} />
              {found && (
                <>
                  <RestsOn plan={plan} passings={analysis.passings} units={units} />
                  <Legs plan={plan} analysis={analysis} units={units} />
                </>
              )}
              <StopsTable plan={plan} trip={said.trip} {...{ analysis, units, onFocus }} />
              {found && <OneFailureWords plan={plan} {...{ rest, analysis, units }} />}
              <CallList
                calls={whatIf.callFirst}
                today={day}
                onChecked={(call) => onEdit(withChecked(said, call, { analysis, on: day }))}
              />
            </>
          );
        }}
      </PlanFrame>
      <LaidSupplies />
      <PlanLimits />
    </>
  );
}

function Verdict({ plan, onAgain }: { plan: Plan; onAgain: () => void }) {
  if (plan.status === 'out-of-time') {
    return (
      <>
        <p className="lead">{tx`${<b>{t('No plan was found in the time there was.')}</b>} Whether there is one is not known.`}</p>
        <p>{tx`Fewer choices take less time: mark supplies to pass by, count only better evidence, or plan a part of the route. ${(
          <button type="button" onClick={onAgain}>
            {t('Try again')}
          </button>
        )}`}</p>
      </>
    );
  }
  if (plan.status === 'none') {
    return (
      <p className="lead">
        <b className="words-short">{t('There is no plan that keeps the reserve.')}</b>
      </p>
    );
  }
  const stops = plan.stops.filter(({ used }) => used).length;
  const unknown = hasUnknown(plan);
  const { fuel, water } = plan.cans;
  const cans =
    fuel + water === 0
      ? t('no cans')
      : t`${`${fuel} ${cansFor('fuel', fuel)}`} and ${`${water} ${cansFor('water', water)}`}`;
  return (
    <p className="lead">{tx`${<b>{tx`${stops === 0 ? t('No stop is needed') : t`Fill at ${count(stops, t('stop'), t('stops'))}`}, with ${cans}.`}</b>} The reserve is kept all the way, at the rate that the verdict uses${unknown ? tx`, ${<strong className="words-unknown">{t('as far as is known')}</strong>}: read what it rests on.` : '.'}`}</p>
  );
}

/** What of the masses is not known: a plan within the limits then says less than it seems to. */
const PartlyKnown = ({ plan, units }: { plan: Plan; units: UnitSystem }) =>
  plan.restsOn
    .filter(({ code }) => code === 'mass-incomplete' || code === 'mass-limit-unknown')
    .map(({ code, text, parts }) => <p key={code}>{withoutPaths(inUnits(units, text, parts))}</p>);

const MORE_CANS: Record<Commodity, readonly [one: string, other: string]> = {
  fuel: [t('more fuel can'), t('more fuel cans')],
  water: [t('more water can'), t('more water cans')],
};

/** "Get 2 more fuel cans (4 owned) and 1 more water can (none owned)." */
function GetCans({ plan, rig }: { plan: Plan; rig: RigFile }) {
  const what = (commodity: Commodity) => {
    const owned = rig[commodity].cans?.owned ?? 0;
    return t`${count(plan.getCans[commodity], ...MORE_CANS[commodity])} (${owned === 0 ? t('none') : owned} owned)`;
  };
  const wanted = (['fuel', 'water'] as const).filter((commodity) => plan.getCans[commodity] > 0);
  return (
    <p className="lead">{tx`${<b>{tx`Get ${andAll(wanted.map(what))}.`}</b>} With what is owned there is no plan.`}</p>
  );
}

const count = (of: number, one: string, other: string): string => `${of} ${plural(of, one, other)}`;
