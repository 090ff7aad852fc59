import type { Passing } from '../../server/contract/analysis.ts';
import { t } from '../language/t.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { saidIn } from '../words/said.ts';

/** Which passings are meant: by point, commodity and place. */
export type PassingPlace = Pick<Passing, 'id' | 'commodity' | 'atKm'>;

const keyOf = ({ id, commodity, atKm }: PassingPlace): string => `${commodity} ${id} ${atKm}`;

interface WhatToKnowProps {
  passings: readonly Passing[];
  places: readonly PassingPlace[];
  units: UnitSystem;
}

/**
 * Why supplies that something rests on are known no better, and what their tags advise, in route order. Nothing where
 * there is nothing to know.
 */
export function WhatToKnow({ passings, places, units }: WhatToKnowProps) {
  const keys = new Set(places.map(keyOf));
  const told = passings.filter((passing) => passing.reasons.length > 0 && keys.has(keyOf(passing)));
  if (told.length === 0) return null;
  return (
    <>
      <h4>{t('What to know of the supplies')}</h4>
      <ul>
        {told.map((passing) => (
          <li key={keyOf(passing)}>
            <b>
              {formatAtKm(passing.atKm, units)}, {passing.name ?? passing.kind}:
            </b>{' '}
            {passing.reasons.map((reason) => saidIn(units, reason)).join('. ')}
          </li>
        ))}
      </ul>
    </>
  );
}
