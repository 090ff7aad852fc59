import { ChoiceField, QuantityField } from '../form/fields.tsx';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';

/** What makes fuel use more than one rate all the way; each part may be left empty. */
export function FuelFiner() {
  return (
    <>
      <details>
        <summary>Where and how loaded that use was observed</summary>
        <p className="says">
          Surfaces and load count from here, so that a rate learned in sand is not raised for sand again.
        </p>
        <ChoiceField
          label="Observed on"
          at="/fuel/observed/surface"
          choices={[{ value: '', words: 'not told' }, ...SURFACE_CHOICES]}
        />
        <QuantityField
          label="with a whole mass of"
          at="/fuel/observed/massKg"
          kind="mass"
          optional
          hint="vehicle, people and load; climb needs it"
        />
        <QuantityField
          label="Rises for each 100 kg more by"
          at="/fuel/loadPercentPer100Kg"
          kind="percent"
          optional
          hint="empty: by the vehicle's mass"
        />
      </details>
      <details>
        <summary>Use by surface</summary>
        <p className="says">As a multiple of the use on sealed road. Empty: ours, as listed under Range.</p>
        {SURFACE_CHOICES.map(({ value, words }) => (
          <QuantityField
            key={value}
            label={words}
            at={`/fuel/surfaceFactors/${value}`}
            kind="factor"
            optional
          />
        ))}
      </details>
      <details>
        <summary>Use by the hour: standing, crawling, heating</summary>
        <p className="says">On slow stretches the larger of distance and hours counts.</p>
        <QuantityField
          label="Engine idling"
          at="/fuel/perHour/idling"
          kind="hourUse"
          optional
          hint="empty: published rate of the fuel"
        />
        <QuantityField
          label="Idling for"
          at="/fuel/hours/idlingPerDay"
          kind="hours"
          optional
          hint="in a day of driving"
        />
        <QuantityField label="Crawling along" at="/fuel/perHour/crawling" kind="hourUse" optional />
        <QuantityField
          label="Standing with air conditioning"
          at="/fuel/perHour/airConditioning"
          kind="hourUse"
          optional
        />
        <QuantityField
          label="Air conditioning for"
          at="/fuel/hours/airConditioningPerDay"
          kind="hours"
          optional
          hint="in any day"
        />
        <QuantityField label="Heater or generator" at="/fuel/perHour/heater" kind="hourUse" optional />
        <QuantityField
          label="Heater or generator for"
          at="/fuel/hours/heaterPerNight"
          kind="hours"
          optional
          hint="in a night"
        />
      </details>
      <details>
        <summary>Climb and the estimate from physics</summary>
        <p className="says">
          Climb is reckoned from the route's heights once the mass is told; ours where left empty.
        </p>
        <QuantityField label="Of the fuel's energy lifts" at="/fuel/climb/efficiency" kind="share" optional />
        <QuantityField label="Given back downhill" at="/fuel/climb/giveBack" kind="share" optional />
        <QuantityField
          label="Rises up to this are noise"
          at="/fuel/climb/thresholdM"
          kind="length"
          optional
        />
        <QuantityField
          label="Drag area"
          at="/fuel/physics/dragAreaM2"
          kind="area"
          optional
          hint="drag coefficient × frontal area"
        />
        <QuantityField
          label="Tyre pressure on sealed road"
          at="/fuel/physics/tyreBar"
          kind="tyrePressure"
          optional
        />
      </details>
    </>
  );
}
