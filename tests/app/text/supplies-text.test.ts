import { describe, expect, it } from 'vitest';
import { planSupplyLines, supplyLines } from '../../../server/app/text/supplies-text.ts';
import type { Plan } from '../../../server/contract/plan.ts';
import { analysisOf, DIESEL, pointFeature, TAP } from '../../helpers/analyse-input.ts';

const analysis = analysisOf({
  features: [
    pointFeature('node/1', 400, { ...DIESEL, name: 'Far pump', opening_hours: 'Mo-Fr 08:00-17:00' }),
    pointFeature('node/2', 500, { ...DIESEL, access: 'customers' }),
    pointFeature('node/3', 600, { ...DIESEL, name: 'Plain' }),
    pointFeature('node/4', 700, { ...DIESEL, access: 'private', name: 'Not ours' }),
    pointFeature('node/5', 800, { ...TAP, fixme: 'has moved?' }),
  ],
});

describe('what to know of supplies', () => {
  it('is told of each that counts and of which there is something, in route order', () => {
    expect(supplyLines(analysis, 'fuel', analysis.fuel)).toEqual([
      'What to know of the fuel supplies that count',
      '- km 400.0, Far pump: Opening hours as mapped: Mo-Fr 08:00-17:00',
      '- km 500.0, fuel station: For customers only (access=customers)',
    ]);
    expect(supplyLines(analysis, 'water', analysis.water)).toEqual([
      'What to know of the water supplies that count',
      '- km 800.0, drinking water: A mapper left a note to be looked into: has moved?',
    ]);
  });

  it('is told of the stops that a plan uses', () => {
    const stops = analysis.passings.map((passing) => ({
      passings: [{ ...passing, used: passing.id === 'node/2' }],
    }));
    expect(planSupplyLines(analysis, { stops } as unknown as Plan)).toEqual([
      'What to know of these stops',
      '- km 500.0, fuel station: For customers only (access=customers)',
    ]);
    expect(planSupplyLines(analysis, { stops: [] } as unknown as Plan)).toEqual([]);
  });
});
