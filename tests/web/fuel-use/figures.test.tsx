import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { FuelUse } from '../../../server/contract/fuel-use.ts';
import { FuelFigures } from '../../../web/fuel-use/FuelFigures.tsx';
import type { UnitSystem } from '../../../web/units/units.ts';
import { SAMPLE_FUEL_USE } from '../sample-fuel-use.ts';

const shown = (use: FuelUse, units: UnitSystem = 'metric') =>
  renderToStaticMarkup(<FuelFigures use={use} units={units} />)
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ')
    .replaceAll('&#x27;', "'");

const row = SAMPLE_FUEL_USE.surfaces[0]!;
const FULL: FuelUse = {
  ...SAMPLE_FUEL_USE,
  model: 'full',
  observed: { surface: 'sealed', massKg: 2600 },
  surfaces: [
    {
      ...row,
      surface: 'sealed',
      km: 900,
      tableFactor: 1,
      factor: 1,
      estimate: null,
      trust: 'the base itself',
    },
    {
      ...row,
      surface: 'sand',
      km: 300,
      allowancePercent: 30,
      tableFactor: 1.6,
      factor: 1.6,
      from: 'rig',
      estimate: { low: 1.4, typical: 1.8, high: 2.5 },
      trust: 'not to be trusted in soft sand',
    },
    { ...row, surface: 'mud', km: 0 },
  ],
  load: { massKg: 2900, observedKg: 2600, percentPer100Kg: 1.2, factor: 1.036 },
  climb: {
    upM: 1240,
    downM: 1100,
    rawUpM: 2900,
    thresholdM: 10,
    efficiency: 0.4,
    giveBack: 0.3,
    litres: 2.4,
  },
  urea: {
    needL: 30,
    tankL: 15,
    reserveL: 0,
    rangeKm: 600,
    longestKm: 900,
    shortL: 7.5,
    points: [{ id: 'node/8', name: 'Red Gate', atKm: 900, detourKm: 0.4 }],
  },
};

describe('the figures of fuel', () => {
  it('give the range at low, typical and high use, before and after the reserve', () => {
    const text = shown(SAMPLE_FUEL_USE);
    expect(text).toContain('to the last drop, km 706 635 534');
    expect(text).toContain('to the reserve, km 572 515 433');
    expect(text).toContain('One rate all the way');
    expect(shown(SAMPLE_FUEL_USE, 'us')).toContain('to the last drop, mi 438 395 332');
  });

  it('show for each surface on the route the factor, whose it is, and where physics cannot be trusted', () => {
    const text = shown(FULL);
    expect(text).toMatch(
      /sand why the factor on sand 1\.6 times .* your own factor\. not to be trusted in soft sand/,
    );
    expect(text).toContain('300 30 % × 1.6 1.4 to 2.5');
    expect(text).not.toContain('mud');
  });

  it('show load and climb with what they were reckoned from', () => {
    const text = shown(FULL);
    expect(text).toContain('2,900 kg against 2,600 kg');
    expect(text).toContain('× 1.036');
    expect(text).toContain('1,240 m up, 1,100 m down: 2.4 L more');
    expect(text).toContain('the track as recorded climbs 2,900 m');
    expect(shown(FULL, 'us')).toContain('4,068 ft up');
  });

  it('say what is not reckoned for want of a figure, rather than show none', () => {
    const text = shown({ ...FULL, load: null, climb: { ...FULL.climb!, litres: null } });
    expect(text).toContain('Load is not reckoned');
    expect(text).toContain('not reckoned, as the mass is not told');
    expect(shown({ ...FULL, climb: null })).toContain('the route has no heights');
  });

  it('say by how much urea solution falls short, and where there is some', () => {
    const text = shown(FULL);
    expect(text).toContain('7.5 L too little');
    expect(text).toContain('km 900: Red Gate');
    expect(shown({ ...FULL, urea: { ...FULL.urea!, shortL: 0 } })).toContain('which it covers');
  });
});
