import { QuantityField } from './fields.tsx';

/** Hours and speed. */
export function PaceSection() {
  return (
    <>
      <QuantityField label="Driving a day" at="/pace/hoursPerDay" kind="hours" />
      <QuantityField label="Slow" at="/pace/kmPerHour/slow" kind="speed" hint="the verdict uses this" />
      <QuantityField label="Typical" at="/pace/kmPerHour/typical" kind="speed" />
      <QuantityField label="Fast" at="/pace/kmPerHour/fast" kind="speed" />
    </>
  );
}
