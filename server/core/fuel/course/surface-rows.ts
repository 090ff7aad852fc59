import { SURFACES } from '../../../contract/surface.ts';
import type { Assumption } from '../../quantity/assumption.ts';
import { OURS } from '../../quantity/assumption.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { ALLOWANCE_PERCENT, metresBySurface } from '../../surface/surface.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import { estimateFactors } from '../engine/physics.ts';
import { relativeFactor, SURFACE_FACTORS } from '../engine/surface-factors.ts';
import { liftedMassKg } from './climb-facts.ts';
import type { FuelFacts } from './fuel-facts.ts';
import type { SurfaceRow } from './fuel-use.ts';

/** Every surface, driven or not: what is reckoned with, and what physics would say. */
export function surfaceRows(facts: FuelFacts): SurfaceRow[] {
  const { model } = facts.rig.fuel;
  const metres = metresBySurface(facts.spans);
  const estimate = estimateOf(facts);
  return SURFACES.map((surface) => ({
    surface,
    m: metres.get(surface) ?? 0,
    allowancePercent: surface === 'unknown' ? facts.allowancePercent : ALLOWANCE_PERCENT[surface],
    tableFactor: model.factors[surface],
    from: model.ownFactors.includes(surface) ? 'rig' : 'ours',
    factor: relativeFactor(model.factors, surface, model.observed.surface),
    estimate: estimate?.[surface] ?? null,
    trust: { phrase: 'rolling-trust', facts: { surface } },
  }));
}

function estimateOf(facts: FuelFacts): Record<SurfaceRow['surface'], UseRange | null> | null {
  const { model, kind, litresPer100Km } = facts.rig.fuel;
  const massKg = liftedMassKg(facts.rig, facts.massKg);
  if (massKg === null) return null;
  return estimateFactors({
    massKg,
    litresPer100Km: litresPer100Km.typical,
    observed: model.observed.surface,
    efficiency: model.climb.efficiency,
    energyMJPerL: FUEL_KINDS[kind].energyMJPerL.typical,
    dragAreaM2: model.physics.dragAreaM2,
    tyreBar: model.physics.tyreBar,
    kmPerHour: (surface) => facts.kmPerHour(surface, 'typical'),
  });
}

/** The factors and allowances of ours that came to bear on this route. */
export function surfaceAssumptions({ rig, spans }: FuelFacts): Assumption[] {
  const { observed, ownFactors } = rig.fuel.model;
  const driven = [...new Set(spans.map((span) => span.surface))];
  const factors = driven
    .filter((surface) => surface !== observed.surface && !ownFactors.includes(surface))
    .map((surface): Assumption => {
      const facts = { factor: SURFACE_FACTORS[surface] };
      const value = { phrase: 'sealed-road-times', facts } as const;
      return { path: `/rig/fuel/surfaceFactors/${surface}`, value, why: OURS };
    });
  const allowances = driven.flatMap((surface): Assumption[] => {
    if (surface === 'unknown') return [];
    const percent = ALLOWANCE_PERCENT[surface];
    const bears = spans.some((span) => span.surface === surface && span.allowancePercent === percent);
    if (!bears) return [];
    const value = { phrase: 'percent-for-bends', facts: { surface, percent } } as const;
    return [{ path: '/trip/surfaces', value, why: OURS }];
  });
  return [...(observed.surface === 'unknown' ? [UNKNOWN_SURFACE] : []), ...factors, ...allowances];
}

const UNKNOWN_SURFACE: Assumption = {
  path: '/rig/fuel/observed/surface',
  value: { phrase: 'word', facts: { word: 'unknown' } },
  why: { phrase: 'from-sealed-road', facts: {} },
};
