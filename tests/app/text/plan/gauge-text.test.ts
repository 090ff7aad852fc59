import { expect, it } from 'vitest';
import { gaugeLines } from '../../../../server/app/text/plan/gauge-text.ts';
import type { GaugeSide } from '../../../../server/contract/whatif.ts';

const edge = { kind: 'start', id: null, name: null, atKm: 0, detourKm: 0, evidence: null } as const;
const side = (onL: number, plannedL: number): GaugeSide => ({
  onL,
  backL: null,
  plannedL,
  from: edge,
  to: { ...edge, kind: 'end' },
});

it('rounds what is planned never below what it covers', () => {
  // Just covered, covered with a litre and more to spare, and not covered.
  const rows = [
    [side(45.3, 45.3), side(45.3, 45.9)],
    [side(45.3, 46.9), side(45.3, 44.9)],
  ].map(([fuel, water], index) => ({
    atKm: 50 * index,
    at: 'step' as const,
    name: null,
    commodities: [],
    fuel: fuel!,
    water: water!,
  }));
  const [, , , , first, second] = gaugeLines({ basis: 'plan', stepKm: 50, rows });
  expect(first!.trim().split(/ +/)).toEqual(['0.0', '46', '-', '46', '46', '-', '46']);
  expect(second!.trim().split(/ +/)).toEqual(['50.0', '46', '-', '46', '46', '-', '44']);
});
