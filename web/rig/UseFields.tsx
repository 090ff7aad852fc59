import { QuantityField } from '../form/fields.tsx';

/** A range of use: at best, typically, at worst. */
export function UseFields({ of, base, kind }: { of: string; base: string; kind: 'fuelUse' | 'waterUse' }) {
  return (
    <>
      <QuantityField label={`${of} at best`} at={`${base}/low`} kind={kind} />
      <QuantityField label={`${of} typically`} at={`${base}/typical`} kind={kind} />
      <QuantityField label={`${of} at worst`} at={`${base}/high`} kind={kind} hint="the verdict uses this" />
    </>
  );
}
