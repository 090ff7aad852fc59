import { QuantityField } from '../form/fields.tsx';

const inWhatIf = (key: string) => ({ in: 'trip' as const, path: `/whatIf/${key}` });

/** What of the what-ifs can be chosen; the hints name the defaults of the reckoning. */
export function Choices() {
  return (
    <fieldset className="form">
      <legend>What is tried</legend>
      <QuantityField label="Waiting" at={inWhatIf('waitDays')} kind="days" hint="empty: 2 days" optional />
      <QuantityField
        label="Hotter by"
        at={inWhatIf('hotterByC')}
        kind="warming"
        hint="empty: 5 °C, or 9 °F"
        optional
      />
      <QuantityField
        label="Turning round at"
        at={inWhatIf('turnRoundAtKm')}
        kind="distance"
        hint="empty: the worst place"
        optional
      />
    </fieldset>
  );
}
