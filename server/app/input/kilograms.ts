import { FUEL_KINDS } from '../../core/fuel/engine/kinds.ts';

/** A litre of tank at 200 bar, as the answer tells it. */
const KG_PER_LITRE = FUEL_KINDS.cng.densityKgPerM3.typical / 1000;

type Keys = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Keys =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A rig file whose CNG is told in kilograms, as it is sold, in the litres of tank that the contract has: `kg` of a tank
 * and `kgPer100Km` in place of `litres` and `litresPer100Km`. Anything else comes back as it is, a key that is told both
 * ways among it: the contract then names what does not fit.
 */
export function inLitres(rig: unknown): unknown {
  if (!isObject(rig) || !isObject(rig.fuel) || rig.fuel.kind !== 'cng') return rig;
  const fuel = renamed(rig.fuel, 'kgPer100Km', 'litresPer100Km');
  const { tanks } = fuel;
  if (!Array.isArray(tanks)) return { ...rig, fuel };
  return {
    ...rig,
    fuel: { ...fuel, tanks: tanks.map((tank) => (isObject(tank) ? renamed(tank, 'kg', 'litres') : tank)) },
  };
}

/** Kilograms under one key as litres under another, a range of them as well. */
function renamed(object: Keys, key: string, litres: string): Keys {
  const { [key]: told, ...rest } = object;
  if (told === undefined || litres in object) return object;
  return { ...rest, [litres]: isObject(told) ? eachInLitres(told) : litresOf(told) };
}

const eachInLitres = (range: Keys): Keys =>
  Object.fromEntries(Object.entries(range).map(([end, kg]) => [end, litresOf(kg)]));

/** What is no number stays, for the contract to refuse. */
const litresOf = (kg: unknown): unknown => (typeof kg === 'number' ? kg / KG_PER_LITRE : kg);
