import { expect, it } from 'vitest';
import type { Caution } from '../../server/core/phrases/cautions.ts';
import { textOf } from '../../server/words/words-of.ts';

it.each<[Caution, string]>([
  [
    { code: 'aboard-for-all', facts: {} },
    'The litres aboard at the start are the same for every rig, however large its tanks. To compare full tanks, leave them out or tell the km and days since the last fill.',
  ],
  [
    { code: 'fuels-differ', facts: { kinds: ['diesel', 'petrol'] } },
    'The rigs burn diesel and petrol: other stations count for each of them.',
  ],
])('says of rigs to compare: %j', (caution, text) => expect(textOf(caution)).toBe(text));
