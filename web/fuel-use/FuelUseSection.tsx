import { useForm } from '../form/form-context.ts';
import { FuelFigures } from './FuelFigures.tsx';

/** What the fuel's litres are reckoned with, and how far they go. */
export function FuelUseSection() {
  const { analysis, units } = useForm();
  return <FuelFigures use={analysis.fuelUse} units={units} />;
}
