import { useMemo } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import { Fields } from '../form/Fields.tsx';
import { TickRow } from '../form/FormRow.tsx';
import { below, FormContext, type FormState, TRIP, useForm } from '../form/form-context.ts';
import { optional } from '../form/items.ts';
import { t } from '../language/t.ts';
import { contentWord } from '../words/plan-words.ts';
import { isMust, tidied, withMustStop, withPassedBy, withStop } from './told-of-stops.ts';

/** What can be told of one stop: pass it by, stop there in any case, how much is to be had, how long it keeps one waiting. */
export function StopFields({ id, commodities }: { id: string; commodities: readonly Commodity[] }) {
  const form = useForm();
  const { said, onEdit } = form;
  const { trip, index } = useMemo(() => withStop(said.trip, id), [said.trip, id]);
  const { kind } = form.analysis.rig.fuel;
  const inside: FormState = {
    ...form,
    said: { ...said, trip },
    // What was settled last may list other stops in this place.
    analysis: { ...form.analysis, trip },
    onEdit: (next) => onEdit({ ...next, trip: tidied(next.trip) }),
  };
  const items = [
    ...commodities.map((commodity) =>
      optional(
        t`Most ${contentWord(commodity, kind)} to be had`,
        `/mostLitres/${commodity}`,
        'volume',
        t('empty: as much as is wanted'),
      ),
    ),
    ...commodities.map((commodity) =>
      optional(
        t`Price of ${contentWord(commodity, kind)} there`,
        `/pricePerLitre/${commodity}`,
        'price',
        t('empty: as of all stops'),
      ),
    ),
    optional(t('Waiting there'), '/waitHours', 'hours', t('empty: as its hours say')),
  ];
  return (
    <div className="form">
      <TickRow
        label={t('Pass by')}
        checked={said.trip.plan?.passBy?.includes(id) ?? false}
        onTick={(passed) => onEdit({ ...said, trip: withPassedBy(said.trip, id, passed) })}
      />
      <TickRow
        label={t('Must stop here')}
        checked={isMust(said.trip, id)}
        onTick={(must) => onEdit({ ...said, trip: withMustStop(said.trip, id, must) })}
      />
      <FormContext.Provider value={inside}>
        <Fields items={items} at={below(TRIP, `/plan/stops/${index}`)} />
      </FormContext.Provider>
    </div>
  );
}
