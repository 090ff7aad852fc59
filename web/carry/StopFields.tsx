import { useMemo } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import { QuantityField } from '../form/fields.tsx';
import { FormContext, type FormState, useForm } from '../form/form-context.ts';
import { contentWord } from '../words/plan-words.ts';
import { tidied, withPassedBy, withStop } from './told-of-stops.ts';

/** What can be told of one stop: pass it by, how much is to be had, how long it keeps one waiting. */
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
  const at = (key: string) => ({ in: 'trip' as const, path: `/plan/stops/${index}/${key}` });
  return (
    <div className="form">
      <label className="tick">
        <input
          type="checkbox"
          checked={said.trip.plan?.passBy?.includes(id) ?? false}
          onChange={(event) => onEdit({ ...said, trip: withPassedBy(said.trip, id, event.target.checked) })}
        />{' '}
        Pass by
      </label>
      <FormContext.Provider value={inside}>
        {commodities.map((commodity) => (
          <QuantityField
            key={commodity}
            label={`Most ${contentWord(commodity, kind)} to be had`}
            at={at(`mostLitres/${commodity}`)}
            kind="volume"
            hint="empty: as much as is wanted"
            optional
          />
        ))}
        <QuantityField
          label="Waiting there"
          at={at('waitHours')}
          kind="hours"
          hint="empty: as its hours say"
          optional
        />
      </FormContext.Provider>
    </div>
  );
}
