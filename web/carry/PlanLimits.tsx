import { TextField, TickField } from '../form/fields.tsx';

const inPlan = (key: string) => ({ in: 'trip' as const, path: `/plan/${key}` });

/** What the plan is held to. */
export function PlanLimits() {
  return (
    <fieldset className="form plan-limits">
      <legend>What the plan is held to</legend>
      {(['fuel', 'water'] as const).map((commodity) => (
        <TextField
          key={commodity}
          label={`Most ${commodity} cans`}
          at={inPlan(`mostCans/${commodity}`)}
          wholeNumbers
          hint="empty: those owned, more if it takes them"
        />
      ))}
      <TickField label="No cans where people sit or sleep" at={inPlan('noneInside')} />
      <TickField
        label="When a stop fails, the reserve may be spent to get away from it"
        at={inPlan('spendReserveOnFailure')}
      />
    </fieldset>
  );
}
