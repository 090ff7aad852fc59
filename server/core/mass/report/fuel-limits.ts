import type { FuelKind } from '../../../contract/rig.ts';
import type { FuelRules } from '../../phrases/rig/mass.ts';
import { fuelKgPerLitre } from '../densities.ts';
import type { FuelLimit } from './masses.ts';

/** Fuel as it is carried. */
export interface CarriedFuel {
  kind: FuelKind;
  /** Capacity of the fixed tanks, litres. */
  tanksL: number;
  cans: { litres: number; owned: number; emptyKg: number };
}

interface LimitRule {
  code: keyof FuelRules;
  /** The fuels that it speaks of. */
  kinds: readonly FuelKind[];
  limit: number;
  unit: 'l' | 'kg';
  carried: (fuel: CarriedFuel) => number;
  source: string;
}

const LIQUIDS: readonly FuelKind[] = ['diesel', 'petrol', 'e85'];
/** Flash point below 23 °C; E85 like petrol (ours). */
const PETROL: readonly FuelKind[] = ['petrol', 'e85'];
const inCansL = ({ cans }: CarriedFuel) => cans.owned * cans.litres;
const oneCanL = ({ cans }: CarriedFuel) => (cans.owned === 0 ? 0 : cans.litres);

/**
 * Limits of some countries on carried fuel, as examples: the rules of the place come first. Check-values K8 to K12.
 * Fuel gases have rules of their own and are not here; nor is the limit for a tank on a trailer (500 l, ADR 1.1.3.3).
 */
export const FUEL_LIMIT_RULES: readonly LimitRule[] = [
  {
    code: 'adr-own-use-tanks',
    kinds: LIQUIDS,
    limit: 1500,
    unit: 'l',
    carried: (fuel) => fuel.tanksL,
    source: 'ADR 1.1.3.3 (a)',
  },
  {
    code: 'adr-own-use-cans',
    kinds: LIQUIDS,
    limit: 60,
    unit: 'l',
    carried: inCansL,
    source: 'ADR 1.1.3.3 (a)',
  },
  {
    code: 'adr-private-can',
    kinds: LIQUIDS,
    limit: 60,
    unit: 'l',
    carried: oneCanL,
    source: 'ADR 1.1.3.1 (a), figure from memory',
  },
  {
    code: 'adr-private-cans',
    kinds: LIQUIDS,
    limit: 240,
    unit: 'l',
    carried: inCansL,
    source: 'ADR 1.1.3.1 (a), figure from memory',
  },
  {
    code: 'adr-small-load-petrol',
    kinds: PETROL,
    limit: 333,
    unit: 'l',
    carried: inCansL,
    source: 'ADR 1.1.3.6',
  },
  {
    code: 'adr-small-load-diesel',
    kinds: ['diesel'],
    limit: 1000,
    unit: 'l',
    carried: inCansL,
    source: 'ADR 1.1.3.6',
  },
  {
    code: 'uk-petrol-unnotified',
    kinds: PETROL,
    limit: 30,
    unit: 'l',
    carried: inCansL,
    source: 'Petroleum (Consolidation) Regulations 2014',
  },
  {
    code: 'uk-petrol-can',
    kinds: PETROL,
    limit: 20,
    unit: 'l',
    carried: oneCanL,
    source: 'Petroleum (Consolidation) Regulations 2014',
  },
  {
    code: 'uk-petrol-notified',
    kinds: PETROL,
    limit: 275,
    unit: 'l',
    carried: inCansL,
    source: 'Petroleum (Consolidation) Regulations 2014',
  },
  {
    code: 'us-materials-of-trade-can',
    kinds: LIQUIDS,
    limit: 30,
    unit: 'l',
    carried: oneCanL,
    source: '49 CFR 173.6 (a)(1)(ii)',
  },
  {
    code: 'us-materials-of-trade',
    kinds: LIQUIDS,
    limit: 200,
    unit: 'kg',
    carried: ({ kind, cans }) => cans.owned * (cans.emptyKg + cans.litres * fuelKgPerLitre(kind)),
    source: '49 CFR 173.6 (d)',
  },
];

/** What is carried against every example that speaks of this fuel, cans taken as full. */
export const fuelLimitsOf = (fuel: CarriedFuel): FuelLimit[] =>
  FUEL_LIMIT_RULES.filter((rule) => rule.kinds.includes(fuel.kind)).map((rule) => {
    const carried = rule.carried(fuel);
    const { code, limit, unit, source } = rule;
    return { code, facts: {}, carried, limit, unit, over: carried > limit, source };
  });
