import type { UseLevel } from '../../../contract/crew.ts';
import type { FuelKind } from '../../../contract/rig.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { Logs, NamedTarget } from '../../../contract/treatment.ts';
import type { KerbIncludes } from '../../../contract/vehicle.ts';
import type { NoFacts } from '../said/said.ts';

/** Values of defaults. */
interface DefaultValues {
  /** A word that a file has in its place. */
  word: { word: string };
  none: NoFacts;
  no: NoFacts;
  number: { value: number };
  kilometres: { m: number };
  metres: { m: number };
  'square-metres': { m2: number };
  percent: { percent: number };
  'percent-exactly': { percent: number };
  'litres-a-day': { litres: number };
  'litres-a-day-at-most': { litres: number };
  'litres-per-100-km': { litres: number };
  'litres-an-hour': { litres: number };
  'kilometres-an-hour': { km: number };
  kilograms: { kg: number };
  hours: { hours: number };
  days: { days: number };
  'days-a-camp': { days: number };
  'with-a-driving-day': NoFacts;
  log: { log: number };
  'straight-line-times': { factor: number };
  'sealed-road-times': { factor: number };
  'percent-for-bends': { surface: Surface; percent: number };
  'cans-none-owned': { litres: number };
  'reserve-of-way': { m: number; share: number };
  'kerb-includes': { includes: Extract<KerbIncludes, string> };
  'driver-of': { kg: number };
  'sides-even': NoFacts;
  target: { name: NamedTarget; logs: Logs };
}

/** Where defaults come from. */
interface DefaultReasons {
  ours: NoFacts;
  'typical-times': { factor: number };
  'usual-can': NoFacts;
  'gas-not-in-cans': { kind: FuelKind };
  'lpg-fill-limit': NoFacts;
  'surface-unknown': NoFacts;
  'own-figure-wins': NoFacts;
  'level-source': { level: UseLevel };
  thirstiest: NoFacts;
  'not-told': NoFacts;
  'within-typical-and-high': NoFacts;
  'all-washing-carried': NoFacts;
  'idling-source': { kind: FuelKind };
  'idling-and-cooling': { coolingLPerHour: number };
  'load-published': NoFacts;
  'physics-only': NoFacts;
  'from-sealed-road': NoFacts;
  'heavier-reading': NoFacts;
  'type-approval': NoFacts;
  'as-kerb-includes': NoFacts;
  'can-mass': NoFacts;
  'strictest-for-bacteria': NoFacts;
  'tests-seldom-more': NoFacts;
  'raw-water-worse': NoFacts;
  'stated-fit-as-it-comes': NoFacts;
  'small-osmosis': NoFacts;
  'slow-ferry': { kmPerHour: number };
}

export interface DefaultPhrases extends DefaultValues, DefaultReasons {}
