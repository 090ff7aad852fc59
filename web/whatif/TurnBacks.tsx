import type { FuelKind } from '../../server/contract/rig.ts';
import type { TurnBack } from '../../server/contract/whatif.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatBeforeKm, type UnitSystem } from '../units/units.ts';
import { contentWord, placeWords } from '../words/plan-words.ts';

interface TurnBacksProps {
  turnBacks: readonly TurnBack[];
  kind: FuelKind;
  units: UnitSystem;
}

/** The last places from which the supply behind can be regained; the first of fuel and water is the one to mind. */
export function TurnBacks({ turnBacks, kind, units }: TurnBacksProps) {
  return (
    <section aria-labelledby="what-if-back">
      <h3 id="what-if-back">{t('Turn back')}</h3>
      {turnBacks.length === 0 ? (
        <p>{t('No place was found beyond which the supply behind is out of reach.')}</p>
      ) : (
        <ul>
          {turnBacks.map((turn) => (
            <li
              key={`${turn.commodity} ${turn.atKm}`}
            >{tx`${<span className={`swatch swatch-${turn.commodity}`} aria-hidden="true" />}Before ${<b>{formatBeforeKm(turn.atKm, units)}</b>} you can still go back to ${placeWords(turn.backTo, units)} with the reserve of ${contentWord(turn.commodity, kind)}.${turn.first && <b>{t(' The first on this stretch: the one to mind.')}</b>}`}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
