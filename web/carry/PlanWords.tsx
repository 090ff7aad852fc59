import type { Analysis } from '../../server/contract/analysis.ts';
import type { Plan, PlanCarry } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { plural, t } from '../language/t.ts';
import { formatAtKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { atPlaces, contentWord, countCans, placeWords } from '../words/plan-words.ts';

interface PlanWordsProps {
  plan: Plan;
  analysis: Analysis;
  units: UnitSystem;
}

/** The plan in sentences: what to leave with, what to take on at each stop used, what to carry and where to pour it. */
export function PlanWords({ plan, analysis, units }: PlanWordsProps) {
  const { kind } = analysis.rig.fuel;
  return (
    <>
      <section aria-labelledby="plan-do">
        <h3 id="plan-do">{t('Do this')}</h3>
        <ol>
          {stepsOf(plan, kind, units).map(({ at, doing }) => (
            <li key={`${at} ${doing}`}>
              <b>{at}:</b> {doing}.
            </li>
          ))}
        </ol>
      </section>
      <section aria-labelledby="plan-carry">
        <h3 id="plan-carry">{t('Carry')}</h3>
        {plan.carries.length === 0 ? (
          <p>{t('No can needs to be full anywhere.')}</p>
        ) : (
          <ul>
            {plan.carries.map((carry) => (
              <li key={`${carry.commodity} ${carry.from.id} ${carry.to.id} ${carry.fromKm}`}>
                <span className={`swatch swatch-${carry.commodity}`} aria-hidden="true" />
                {carryWords(carry, kind, units)}
              </li>
            ))}
          </ul>
        )}
      </section>
    </>
  );
}

/** What is done at the start and at each supply that is used, in the order of the road. */
function stepsOf(plan: Plan, kind: FuelKind, units: UnitSystem): { at: string; doing: string }[] {
  const start = (['fuel', 'water'] as const).flatMap((commodity) => {
    const first = plan.legs[commodity][0];
    if (first === undefined) return [];
    const full = first.cans === 0 ? '' : t` and ${countCans(first.cans)} full`;
    return [t`${formatLitres(first.tankL, units)} of ${contentWord(commodity, kind)} in the tanks${full}`];
  });
  const from = plan.legs.fuel[0]?.from ?? plan.legs.water[0]?.from;
  const steps = plan.stops
    .flatMap(({ passings }) => passings)
    .filter(({ used }) => used)
    .sort((a, b) => a.atKm - b.atKm)
    .map(({ name, kind: what, atKm, commodity, fillL, cansFull }) => {
      const full = cansFull === null || cansFull === 0 ? '' : t`; leave with ${countCans(cansFull)} full`;
      const taken =
        fillL === null
          ? t`fill ${contentWord(commodity, kind)}`
          : fillL < 0
            ? t`let ${formatLitres(-fillL, units)} of ${contentWord(commodity, kind)} go, for the sake of a permitted mass`
            : t`take on ${formatLitres(fillL, units)} of ${contentWord(commodity, kind)}`;
      return { at: `${name ?? what} (${formatAtKm(atKm, units)})`, doing: `${taken}${full}` };
    });
  return from === undefined
    ? steps
    : [{ at: placeWords(from, units), doing: t`leave with ${start.join('; ')}` }, ...steps];
}

/** "4 cans of diesel (80 l) from A (km 127) to C (km 851); pour them in at km 237, 348." */
export function carryWords(carry: PlanCarry, kind: FuelKind, units: UnitSystem): string {
  const { cans, commodity, litres, from, to, pourAtKm } = carry;
  const what = t`${countCans(cans)} of ${contentWord(commodity, kind)} (${formatLitres(litres, units)})`;
  const left = cans - pourAtKm.length;
  const them = left > 0 ? t`${pourAtKm.length} of them` : plural(cans, t('it'), t('them'));
  const pour =
    pourAtKm.length === 0
      ? t('none is poured before')
      : t`pour ${them} in at ${atPlaces(pourAtKm, units)}${left > 0 ? t`; ${left} still full on arrival` : ''}`;
  return t`${what} full from ${placeWords(from, units)} to ${placeWords(to, units)}; ${pour}.`;
}
