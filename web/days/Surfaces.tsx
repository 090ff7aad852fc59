import type { Surface } from '../../server/contract/surface.ts';
import { ChoiceField, QuantityField } from '../rig/fields.tsx';
import { ListFields } from '../rig/ListFields.tsx';
import { SURFACE_CHOICES } from '../rig/surface-choices.ts';
import { SurfaceSwatch } from './SurfacePattern.tsx';

/** What is under the wheels, by stretch, as a list of fields; the strip's road shows the same as patterns. */
export function Surfaces({ lengthKm, told }: { lengthKm: number; told: readonly Surface[] }) {
  return (
    <>
      <ListFields
        legend="What is under the wheels"
        one="stretch"
        at={{ in: 'trip', path: '/surfaces' }}
        fresh={() => ({ fromKm: 0, toKm: Math.round(lengthKm * 100) / 100, surface: 'gravel' })}
      >
        {(entry) => (
          <>
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
          </>
        )}
      </ListFields>
      {told.length > 0 && (
        <p className="surface-key">
          {told.map((surface) => (
            <span key={surface}>
              <SurfaceSwatch surface={surface} /> {surface}
            </span>
          ))}
        </p>
      )}
    </>
  );
}
