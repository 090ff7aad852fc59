import { describe, expect, it } from 'vitest';
import { RigFile } from '../../server/contract/rig.ts';
import { TripFile } from '../../server/contract/trip.ts';
import { FULL_RIG, FULL_TRIP } from './full-plan.ts';

/** Every key that a schema knows, as a path; entries of lists share one path. */
function keysOfSchema(schema: unknown, path = ''): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties, items, anyOf } = schema as Record<string, unknown>;
  const below = Object.entries(properties ?? {}).flatMap(([key, value]) => [
    `${path}/${key}`,
    ...keysOfSchema(value, `${path}/${key}`),
  ]);
  const alternatives = Array.isArray(anyOf) ? anyOf.flatMap((each) => keysOfSchema(each, path)) : [];
  return [...below, ...keysOfSchema(items, path), ...alternatives];
}

function keysOfValue(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((each) => keysOfValue(each, path));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => [
    `${path}/${key}`,
    ...keysOfValue(each, `${path}/${key}`),
  ]);
}

/** Surfaces, kinds of source and classes of germs all have the same keys: one of them told stands for all. */
const alike = (key: string): string =>
  key.replace(/\/(hazards|bySurface)\/[\w-]+|\/(logs|stopsPercent)\/\w+/, '/$1$2/…');

const untold = (schema: unknown, value: unknown) => {
  const told = new Set(keysOfValue(value).map(alike));
  return [...new Set(keysOfSchema(schema).map(alike))].filter((key) => !told.has(key));
};

describe('the rig and trip that tell everything', () => {
  it('leave out only what stands in the place of something told', () => {
    const ranges = /\/(cooking|washingUp|washing|shower|litresPerDay)\/(low|typical|high)$/;
    expect(untold(RigFile, FULL_RIG).filter((key) => !ranges.test(key))).toEqual([
      '/fuel/reserve/litres',
      '/fuel/reserve/fraction',
      // Those of a petrol engine.
      '/fuel/engine/octane',
      '/fuel/engine/ethanolPercent',
      '/fuel/urea/percentOfFuel',
      '/water/litresPerDay',
      '/water/reserve/litres',
      '/water/reserve/fraction',
      '/crew/heat/wbgtC',
      '/treatment/target/bacteria',
      '/treatment/target/viruses',
      '/treatment/target/protozoa',
      '/vehicle/axleLift',
      '/vehicle/axleLift/lifted',
      '/vehicle/axleLift/wheelRadiusM',
      '/vehicle/axleLift/steps',
      '/vehicle/axleLift/steps/degrees',
      '/vehicle/axleLift/steps/groundAxleKg',
    ]);
    expect(untold(TripFile, FULL_TRIP)).toEqual([
      '/aboard/fuelKmSinceFill',
      '/aboard/waterLitres',
      // In place of what it is made of.
      '/heat/wbgtC',
      // In place of what the extract covers by its own content.
      '/extracts/whole',
      '/extracts/boundaries',
      '/extracts/boundaries/commodity',
      '/extracts/boundaries/rings',
      '/extracts/boundaries/file',
    ]);
  });
});
