import { describe, expect, test } from 'vitest';
import type { Sentence } from '../../../server/contract/analysis.ts';
import {
  analysisOf,
  DIESEL,
  documentOf,
  equatorDocument,
  equatorLon,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';

/** A sentence as plain words, quantities rounded to whole units. */
const plain = (sentences: Sentence[]): string =>
  sentences
    .map((sentence) =>
      sentence
        .map((part) => {
          if (typeof part === 'string') return part;
          if ('strong' in part) return part.strong;
          const figure = Math.round(part.quantity);
          return part.as === 'at' ? `km ${figure}` : `${figure} ${part.unit}`;
        })
        .join(''),
    )
    .join(' ');

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, step) => from + step);

const named = (id: string, km: number, tags: Record<string, string>, name: string) =>
  pointFeature(id, km, { ...tags, name });

describe('the answer in sentences', () => {
  test('names the longest stretch, what it comes to, and what to carry where', () => {
    const features = [named('node/1', 640, DIESEL, 'Halfway')];
    const { answer } = analysisOf({ features });
    expect(plain(answer.fuel)).toBe(
      'Halfway to the end, km 640 to km 1340. Arrives with 8 l: eats into the reserve by 9 l.',
    );
    expect(plain(answer.todo)).toContain('Diesel: 1 can of 20 l from Halfway (km 640) to the end (km 1340).');
  });

  test('says where a short stretch runs dry, and which supply inside it does not count and why', () => {
    const features = [named('node/2', 700, { natural: 'spring' }, 'Cold spring')];
    const { answer } = analysisOf({ features });
    expect(plain(answer.water)).toMatch(/Runs dry at km \d+\./);
    expect(plain(answer.water)).toContain('Cold spring (km 700) does not count: not stated fit to drink');
  });

  test('names a worse stretch beside the longest', () => {
    const features = [named('node/1', 700, DIESEL, 'Middle')];
    const trip = { ...inputOf().trip, aboard: { fuelLitres: 30 } };
    const { answer } = analysisOf({ features, trip, document: equatorDocument(1420) });
    expect(plain(answer.fuel)).toContain('Worse: the start to Middle, km 0 to km 700. Runs dry at');
  });

  test('says what to fill before leaving where the tanks have room for what is missing', () => {
    const features = [named('node/1', 10, DIESEL, 'Near'), named('node/2', 650, DIESEL, 'Middle')];
    const trip = { ...inputOf().trip, aboard: { fuelLitres: 5, waterDaysSinceFill: 0 } };
    const { answer } = analysisOf({ features, trip });
    // 1.7 l to the first, 17 in reserve: 13.7 are missing.
    const todo = answer.todo.map((sentence) => plain([sentence]));
    expect(todo).toContain('Diesel: fill at least 14 l more before leaving.');
    expect(todo.filter((text) => /^Diesel: .* from the start/.test(text))).toEqual([]);
  });

  test('names the longest of many long detours, and each of a few', () => {
    const stations = (count: number) =>
      Array.from({ length: count }, (_, index) => ({
        ...pointFeature(`node/${index}`, 100 * (index + 1), { ...DIESEL, name: `S${index}` }, 1 + index / 10),
      }));
    const few = plain(analysisOf({ features: stations(3) }).answer.fuel);
    expect(few).toMatch(/Rests on detours of over 1 km, one way: S2 \(km 300\) 2 km, S1 \(km 200\) 1 km, S0/);
    const many = plain(analysisOf({ features: stations(12) }).answer.fuel);
    expect(many).toContain('Rests on 12 detours of over 1 km, one way, the longest 3 km to S11 (km 1200).');
  });

  test('names the straight step that a verdict stands on, and how it is counted', () => {
    // A road of 300 km with one step of 50 km in its middle: less than a fifth.
    const kms = [...range(0, 120), ...range(170, 300)];
    const document = documentOf([kms.map((km) => [equatorLon(km), 0] as [number, number])]);
    const { answer, fuel } = analysisOf({ document });
    expect(fuel.gaps[0]).toMatchObject({ verdict: 'enough', doubt: { of: 'sparse', leavesUnknown: false } });
    expect(fuel.gaps[0]!.wayKm).toBeCloseTo(315, 3);
    expect(plain(answer.fuel)).toContain('The route runs straight from km 120 to km 170: counted × 1.3.');
  });

  test('says truly why nobody knows: the steps, not what is aboard', () => {
    const { answer, fuel } = analysisOf({ document: equatorDocument(300, 100) });
    expect(fuel.gaps[0]).toMatchObject({ verdict: 'unknown', doubt: { of: 'sparse', leavesUnknown: true } });
    expect(plain(answer.fuel)).toContain(
      'Nobody knows: the route gives straight lines, the longest from km 0 to km 300, not the road.',
    );
  });

  test('takes straight steps for a road where the user vouches for them', () => {
    const document = equatorDocument(300, 100);
    const { fuel, cautions } = analysisOf({ document, trip: { ...inputOf().trip, routeIsRoad: true } });
    expect(fuel.gaps[0]).toMatchObject({ verdict: 'enough', doubt: null });
    expect(fuel.gaps[0]!.wayKm).toBeCloseTo(300, 3);
    expect(cautions.map(({ code }) => code)).not.toContain('sparse-steps');
  });

  test('asks for what is not known instead of proposing cans for it', () => {
    const features = [named('node/9', 700, { 'disused:amenity': 'fuel' }, 'Old pump')];
    const supplies = { extracts: [], features, cover: [], skipped: [], cautions: [] };
    const { answer } = analysisOf({ supplies });
    expect(plain(answer.fuel)).toContain('part of it is without map data');
    expect(plain(answer.todo)).toContain('Find out where there is diesel between km 0 and km 1340');
    expect(plain(answer.todo)).not.toContain('can');
  });

  test('says of what no extract tells anything how far what is aboard goes, and how to get data', () => {
    const supplies = { extracts: [], features: [], cover: [], skipped: [], cautions: [] };
    const { answer } = analysisOf({ supplies });
    expect(plain(answer.fuel)).toMatch(
      /^No extract tells of diesel on this route: .* What is aboard lasts \d+(\.\d+)? km of the 1340 km needed/,
    );
    expect(plain(answer.water)).toMatch(/What is aboard lasts [\d.]+ days of the [\d.]+ days needed/);
    expect(plain(answer.todo)).toContain('Get map data that tells of drinking water');
    expect(plain(answer.todo)).not.toContain('every stretch holds');
  });

  test('asks how far the next supply is past the end where nobody said so, once', () => {
    const features = [named('node/1', 100, DIESEL, 'A'), named('node/2', 100, TAP, 'B')];
    const { answer } = analysisOf({ features, document: equatorDocument(200), trip: {} });
    expect(plain(answer.todo)).toBe(
      'Say how far it is from the end of the route to the next supply. Leave with everything full. Confirm each supply before you leave.',
    );
  });

  test('says that all holds only when all does', () => {
    const features = [named('node/1', 100, DIESEL, 'A'), named('node/2', 100, TAP, 'B')];
    const { answer } = analysisOf({ features, document: equatorDocument(200) });
    expect(plain(answer.todo)).toContain('every stretch holds with the reserve');
    expect(plain(analysisOf({ features }).answer.todo)).not.toContain('every stretch holds');
  });

  test('says how many cans are lacking beyond those owned', () => {
    const { answer } = analysisOf({ features: [] });
    // 1,340 km need 227.8 l and 17 l of reserve, 127 l are aboard: 117.8 l, 6 cans, 4 owned.
    expect(plain(answer.todo)).toContain('Diesel: 6 cans of 20 l from the start');
    expect(plain(answer.todo)).toContain('2 more than you own');
  });
});
