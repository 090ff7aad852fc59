import { expect, it } from 'vitest';
import { type Analysed, analyse } from '../../../server/core/analyse/analyse.ts';
import { mapDataOf } from '../../../server/core/mapview/map-data.ts';
import { simplifyLine } from '../../../server/core/mapview/simplify-line.ts';
import { supplyMarks } from '../../../server/core/mapview/supply-marks.ts';
import {
  DIESEL,
  equatorDocument,
  equatorLon,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';

/**
 * 1,000 km along the equator; the tank's 127 l last for 747 km. On the route a station and a tap, 20 km off it another
 * station, out of the corridor of 5 km, that could rescue the gap.
 */
function analysed(): Analysed {
  const outcome = analyse(
    inputOf({
      document: equatorDocument(1000),
      features: [
        pointFeature('node/1', 100, DIESEL),
        pointFeature('node/2', 500, TAP),
        pointFeature('node/3', 700, { ...DIESEL, name: 'Far fuel' }, 20),
      ],
    }),
  );
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

it('what the route passes is marked, and after it once what could rescue a short gap, at the place of the turn-off', () => {
  const { analysis, points } = analysed();
  const marks = supplyMarks(analysis, points);
  expect(marks.map(({ mark }) => [mark.id, mark.commodity, mark.atM.map(Math.round)])).toEqual([
    ['node/1', 'fuel', [100_000]],
    ['node/2', 'water', [500_000]],
    ['node/3', 'fuel', [700_000]],
  ]);
  expect(marks[2]).toMatchObject({ mark: { name: 'Far fuel', counts: true, tags: DIESEL } });
  expect(marks[2]?.lon).toBeCloseTo(equatorLon(700), 5);
  // 20 km are 20 / 110.574 degrees of latitude there.
  expect(marks[2]?.lat).toBeCloseTo(0.18087, 4);
});

it('the map has the line with its metres, the pieces of both commodities, the marks and the notice', () => {
  const all = analysed();
  const line = simplifyLine(all.route, 900);
  const data = mapDataOf(all, line, 'a notice');
  // A straight line keeps its ends only.
  expect(data.line.atM).toEqual([0, 1_000_000]);
  expect(data.line.coordinates[0]).toEqual([0, 0]);
  expect(data.line.coordinates[1]?.[0]).toBeCloseTo(equatorLon(1000), 5);
  expect(data.bbox).toEqual(all.analysis.route.bbox);
  expect(data.notice).toBe('a notice');
  for (const commodity of ['fuel', 'water'] as const) {
    const pieces = data.route.features.filter(({ properties }) => properties.commodity === commodity);
    expect(pieces.at(0)?.properties.fromM).toBe(0);
    expect(pieces.at(-1)?.properties.toM).toBeCloseTo(1_000_000, 3);
  }
  expect(data.supplies.features.map(({ properties }) => properties.id)).toEqual([
    'node/1',
    'node/2',
    'node/3',
  ]);
});
