import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isCalm, osmXml, StraightRoute, straightMap } from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

const fuelOnly = { 'fuel.osm': osmXml({ objects: straightMap({ water: null }) }) };

describe('a route of whose water no extract tells', { tags: 'slow' }, () => {
  it('says so, and how long what is aboard lasts, and no stretch without water', async () => {
    const analysis = await route.analysis(fuelOnly);
    expect(analysis.noData).toEqual(['water']);
    const text = await route.run(fuelOnly);
    expect(text).not.toContain('Longest stretch without drinking water');
    expect(text).toContain(
      'No extract tells of drinking water on this route: neither where it is nor that there is none.',
    );
    expect(text).toMatch(/What is aboard lasts [\d.]+ days of the [\d.]+ days needed/);
    expect(text).toContain('Get map data that tells of drinking water');
    expect(text).not.toContain('every stretch holds');
  });

  it('has its fuel answered on its own, by the gaps and by the plan', async () => {
    expect(isCalm(await route.analysis(fuelOnly), 'fuel')).toBe(true);
    const text = await route.run(fuelOnly, {}, { command: 'plan' });
    expect(text).toContain('Fuel: fill at Middle fuel');
    expect(text).toContain('No extract tells of drinking water on this route');
  });

  it('has it answered by the plan also where no cans of water could be enough', async () => {
    const trip = { plan: { mostCans: { fuel: 0, water: 0 } } };
    const text = await route.run(fuelOnly, trip, { command: 'plan' });
    expect(text).toContain('Fuel: fill at Middle fuel');
    expect(text).toContain('Water is not planned');
  });

  it('is not what a map without any water in it says', async () => {
    const dry = { 'land.osm': osmXml({ objects: straightMap({ fuel: null, water: null }) }) };
    expect((await route.analysis(dry)).noData).toEqual([]);
  });
});

describe('a route of whose fuel no extract tells', () => {
  const waterOnly = { 'water.osm': osmXml({ objects: straightMap({ fuel: null }) }) };

  it('has its water planned on its own, and the fuel said not to be', { tags: 'slow' }, async () => {
    expect((await route.analysis(waterOnly)).noData).toEqual(['fuel']);
    const trip = { plan: { mostCans: { fuel: 0, water: 0 } } };
    const text = await route.run(waterOnly, trip, { command: 'plan' });
    expect(text).toContain('Water: fill at Middle');
    expect(text).toContain('Fuel is not planned');
    expect(text).not.toContain('Water is not planned');
  });
});
