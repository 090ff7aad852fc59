import { expect, it } from 'vitest';
import { reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import { washingStops } from '../../../../server/core/crew/aboard/washing-stops.ts';
import { inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';

it('of waters marked safe for skin only those that the route does not come by are told of', () => {
  const outcome = reckonTrip(inputOf({ features: [pointFeature('node/1', 300, TAP)] }));
  if (!outcome.ok) throw new Error('no route');
  const { passings } = outcome.value.analysis;
  const { stopsM, cautions } = washingStops(['node/1', 'node/2', 'node/1'], passings);
  expect(stopsM).toEqual([expect.closeTo(300_000, 1)]);
  expect(cautions).toEqual([{ code: 'washing-source-not-passed', facts: { id: 'node/2' } }]);
});
