import type { Surface } from '../../server/contract/surface.ts';
import { AddPart } from '../form/AddPart.tsx';
import { QuantityField } from '../form/fields.tsx';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** Slow, typical and fast to begin with on each surface, km/h (ours). */
const TYPICAL_PACE: Record<Surface, { slow: number; typical: number; fast: number }> = {
  sealed: { slow: 70, typical: 80, fast: 95 },
  gravel: { slow: 45, typical: 55, fast: 70 },
  track: { slow: 20, typical: 30, fast: 40 },
  sand: { slow: 15, typical: 20, fast: 30 },
  rock: { slow: 6, typical: 10, fast: 15 },
  mud: { slow: 6, typical: 12, fast: 20 },
  salt: { slow: 30, typical: 45, fast: 60 },
  unknown: { slow: 25, typical: 35, fast: 50 },
};
const ENDS = ['slow', 'typical', 'fast'] as const;

/** Hours and speed, by surface where that is told. */
export function PaceSection() {
  return (
    <>
      <QuantityField label="Driving a day" at="/pace/hoursPerDay" kind="hours" />
      <QuantityField label="Slow" at="/pace/kmPerHour/slow" kind="speed" hint="the verdict uses this" />
      <QuantityField label="Typical" at="/pace/kmPerHour/typical" kind="speed" />
      <QuantityField label="Fast" at="/pace/kmPerHour/fast" kind="speed" />
      <details>
        <summary>Pace by surface</summary>
        <p className="says">
          Counts where the trip names the surface. Without it the pace above is taken, slowed on rough ground.
        </p>
        {SURFACE_CHOICES.map(({ value, words }) => (
          <AddPart
            key={value}
            at={`/pace/bySurface/${value}`}
            what={`a pace ${onSurface(value, words)}`}
            without=""
            start={{ kmPerHour: { ...TYPICAL_PACE[value] } }}
          >
            <fieldset>
              <legend>Pace {onSurface(value, words)}</legend>
              {ENDS.map((end) => (
                <QuantityField
                  key={end}
                  label={end}
                  at={`/pace/bySurface/${value}/kmPerHour/${end}`}
                  kind="speed"
                  typical={TYPICAL_PACE[value][end]}
                />
              ))}
              <QuantityField
                label="Driving a day"
                at={`/pace/bySurface/${value}/hoursPerDay`}
                kind="hours"
                optional
                hint="empty: as above"
              />
            </fieldset>
          </AddPart>
        ))}
      </details>
    </>
  );
}

const onSurface = (surface: Surface, words: string): string =>
  surface === 'unknown' ? 'where the surface is unknown' : `on ${words}`;
