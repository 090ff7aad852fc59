import { describe, expect, it } from 'vitest';
import { problemFrom } from '../../../web/api/api.ts';
import { refusalFor } from '../../../web/form/form-context.ts';
import { fieldWords, withoutPaths } from '../../../web/words/field-words.ts';

const refusal = (detail: string, place: string) =>
  problemFrom(422, JSON.stringify({ code: 'rig-invalid', title: 'Rig not usable', detail, place }));

describe('places in words', () => {
  it('names a path as the form does', () => {
    expect(fieldWords('/corridorKm', 'metric')).toBe('Corridor either side');
    expect(withoutPaths('Correct /fuel/tanks/0/litres.')).toBe('Correct fuel, tanks 1, litres.');
    expect(withoutPaths('Put the three numbers of /fuel/litresPer100Km in order')).toBe(
      'Put the three numbers of Fuel use in order',
    );
  });

  it('names several places apart in one sentence, and no unit as part of a name', () => {
    expect(withoutPaths('not told: /vehicle/axleKg, /water/tanks/1/position, /fuel/cans/position')).toBe(
      'not told: Axle loads at kerb mass, place of water tank 2, place of the fuel cans',
    );
    expect(fieldWords('/vehicle/axleLift/wheelRadiusM', 'metric')).toBe('vehicle, axle lift, wheel radius');
    expect(fieldWords('/vehicle/people/0/position', 'metric')).toBe('place of person 1');
  });

  it('leaves units, addresses and tags alone', () => {
    const text = '17 l/100 km at 35 km/h, https://example.org/a/b, and/or';
    expect(withoutPaths(text)).toBe(text);
  });
});

describe('a refusal beside its field', () => {
  const problem = refusal('Rig, /fuel/tanks/0/litres: -5; expected more', '/fuel/tanks/0/litres');

  it('says what came and what was expected, at that field only', () => {
    expect(refusalFor(problem, 'rig', '/fuel/tanks/0/litres')).toBe('-5; expected more');
    expect(refusalFor(problem, 'rig', '/fuel/tanks/1/litres')).toBeNull();
    expect(refusalFor(problem, 'trip', '/fuel/tanks/0/litres')).toBeNull();
  });

  it('of a whole range stands at its typical value', () => {
    const range = refusal('Rig, /water/litresPerDay: low 9, typical 5', '/water/litresPerDay');
    expect(refusalFor(range, 'rig', '/water/litresPerDay/typical')).toBe('low 9, typical 5');
    expect(refusalFor(range, 'rig', '/water/litresPerDay/low')).toBeNull();
  });
});
