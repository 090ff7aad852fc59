import type { SurfaceEntry } from '../../server/contract/surface.ts';
import { ChoiceField, QuantityField } from '../form/fields.tsx';
import { useForm } from '../form/form-context.ts';
import { ListFields } from '../form/ListFields.tsx';
import { SurfaceSwatch } from '../marks/SurfacePattern.tsx';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** What is under the wheels, by stretch, as a list of fields; the strip's road shows the same as patterns. */
export function Surfaces({ lengthKm }: { lengthKm: number }) {
  const { said, units } = useForm();
  const entries = said.trip.surfaces ?? [];
  return (
    <ListFields
      legend="What is under the wheels"
      one="stretch"
      at={{ in: 'trip', path: '/surfaces' }}
      fresh={() => ({ fromKm: 0, toKm: Math.round(lengthKm * 100) / 100, surface: 'gravel' })}
    >
      {(entry, _, index) => (
        <details>
          <summary>
            {stretchWords(entries[index], units)}{' '}
            <SurfaceSwatch surface={entries[index]?.surface ?? 'unknown'} />
          </summary>
          <ChoiceField label="Surface" at={`${entry}/surface`} choices={SURFACE_CHOICES} />
          <QuantityField label="from" at={`${entry}/fromKm`} kind="distance" />
          <QuantityField
            label="to"
            at={`${entry}/toKm`}
            kind="distance"
            hint="where stretches overlap the later holds"
          />
          <QuantityField
            label="Allowance for winding"
            at={`${entry}/allowancePercent`}
            kind="percent"
            optional
            hint="empty: that of the surface"
          />
        </details>
      )}
    </ListFields>
  );
}

function stretchWords(entry: SurfaceEntry | undefined, units: UnitSystem): string {
  if (entry === undefined) return 'a stretch';
  const surface = entry.surface === 'unknown' ? 'not told' : entry.surface;
  return `${formatAtKm(entry.fromKm, units)} to ${formatAtKm(entry.toKm, units)}: ${surface}`;
}
