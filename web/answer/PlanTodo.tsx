import type { Analysis } from '../../server/contract/analysis.ts';
import type { PlanCarry } from '../../server/contract/plan.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { andAll, worded } from '../language/codes.ts';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Planned } from '../state/use-plan.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { countCans, hasUnknown, placeWords } from '../words/plan-words.ts';
import { saidIn } from '../words/said.ts';
import { capitalised, commodityWords } from '../words/words.ts';
import { TodoBox } from './TodoBox.tsx';

/** At most so many stretches with full cans are named for each commodity; the panel has all. */
const NAMED = 1;

interface PlanTodoProps {
  analysis: Analysis;
  plan: PlanReply;
  units: UnitSystem;
  /** How the plan stands: the box never changes without saying so. */
  standing: PlanStanding;
}

/**
 * `searching`: a good plan, while a better one is searched for; `unproven`: the search was stopped; `changed`: another
 * than the one that was shown first.
 */
export type PlanStanding = 'made' | 'searching' | 'unproven' | 'changed';

/** How the plan that is shown stands. */
export function standingOf({
  searching,
  stopped,
  outcome,
}: Pick<Planned, 'searching' | 'stopped' | 'outcome'>): PlanStanding {
  if (searching) return stopped ? 'unproven' : 'searching';
  return outcome === 'changed' ? 'changed' : 'made';
}

const STANDING_WORDS: Record<PlanStanding, string> = {
  made: t('Do this, by the plan: fill at each of its stops, confirm them before you leave'),
  searching: t('Do this, by the plan; a better one is still searched for'),
  unproven: t('Do this, by a plan that is not proven to be the best; confirm its stops before you leave'),
  changed: t('The plan has changed. Do this, by the new one; confirm its stops before you leave'),
};

/** What to do by the carry plan: cans to get, what to carry over which stretch, whom to telephone. */
export function PlanTodo({ analysis, plan: { plan, whatIf }, units, standing }: PlanTodoProps) {
  const { getCans, carries } = plan;
  const [first] = whatIf.callFirst.filter(({ verdict }) => verdict !== 'enough');
  const unknown = hasUnknown(plan);
  const get = (['fuel', 'water'] as const).filter((commodity) => getCans[commodity] > 0);
  return (
    <TodoBox label={STANDING_WORDS[standing]}>
      {analysis.cautions
        .filter(({ code }) => code === 'route-closed')
        .map((caution) => (
          <p key={caution.text}>
            <strong>{tx`${formatAtKm(caution.fromKm ?? 0, units)} to ${formatAtKm(caution.toKm ?? 0, units)}: ${saidIn(units, caution)}`}</strong>
          </p>
        ))}
      {get.length > 0 && (
        <p>{tx`Get ${<strong>{andAll(get.map((each) => t`${getCans[each]} more ${worded(each)} ${plural(getCans[each], t('can'), t('cans'))}`))}</strong>}.`}</p>
      )}
      {(['fuel', 'water'] as const).map((commodity) => {
        const of = carries.filter((carry) => carry.commodity === commodity);
        const name = commodityWords(commodity, analysis.rig.fuel.kind);
        const onNoMap = analysis.noData.includes(commodity);
        return (
          <p key={commodity}>
            {onNoMap && (
              <>
                <strong>{tx`No map data tells of ${name}: get an extract that does, before you plan on this.`}</strong>{' '}
              </>
            )}
            {capitalised(name)}:{' '}
            {of.length === 0 ? t('no can need be full.') : <Carries {...{ carries: of, units }} />}
          </p>
        );
      })}
      {unknown && (
        <p>{tx`${<strong className="words-unknown">{t('Not all of it is known')}</strong>}: read what the plan rests on.`}</p>
      )}
      {first !== undefined && (
        <p>{tx`Telephone ${<strong>{first.name ?? first.kind}</strong>} before you leave: most hangs on it.`}</p>
      )}
    </TodoBox>
  );
}

function Carries({ carries, units }: { carries: readonly PlanCarry[]; units: UnitSystem }) {
  const more = carries.length - NAMED;
  return (
    <>
      {carries.slice(0, NAMED).map(({ cans, from, to }, index) => (
        <span
          key={`${from.id} ${from.atKm}`}
        >{tx`${index > 0 && ', '}${<strong>{countCans(cans)}</strong>} from ${placeWords(from, units)} to ${placeWords(to, units)}`}</span>
      ))}
      {more > 0 && t`, and on ${more} more ${plural(more, t('stretch'), t('stretches'))}`}.
    </>
  );
}
