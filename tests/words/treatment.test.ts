import { expect, it } from 'vitest';
import { isReadersOwn } from '../../server/words/parts/metric.ts';
import { textOf, type Utterance, wordsOf } from '../../server/words/words-of.ts';

const LOGS = { bacteria: 6, viruses: 2.345, protozoa: 3 };

it.each<[string, Utterance, boolean]>([
  [
    '3 min of rolling boil, 3 needed at 2501 m, where water boils at 92 °C (CDC)',
    {
      phrase: 'boil-long-enough',
      facts: { minutes: 3, neededMinutes: 3, at: { altitudeM: 2500.6, boilsAtC: 91.6234 } },
    },
    true,
  ],
  [
    '1 min of rolling boil, 3 are needed where the height is not known (CDC)',
    { phrase: 'boil-too-short', facts: { minutes: 1, neededMinutes: 3, at: null } },
    false,
  ],
  [
    'water runs at 5.56 l/min, its dose is for 4: throttle the tap',
    { phrase: 'water-too-fast', facts: { lPerMin: 5.5555, ratedLPerMin: 4 } },
    true,
  ],
  [
    'lamp: water taken as no faster than 4 l/min',
    { phrase: 'flow-taken', facts: { stage: 'lamp', ratedLPerMin: 4 } },
    true,
  ],
  [
    'taken as river or lake, bacteria 6, viruses 2.35, protozoa 3 log, at the tap',
    { phrase: 'taken-as', facts: { kind: 'river', logs: LOGS, at: 'tap' } },
    false,
  ],
  [
    '70 l in about 23 min at 3.1 l/min (rope and bucket)',
    { phrase: 'filled-in', facts: { litres: 70, minutes: 22.1, lPerMin: 3.11, how: 'rope-and-bucket' } },
    true,
  ],
  [
    '1.66 log of viruses short of the target purifier (reaches bacteria 6, viruses 2.35, protozoa 3)',
    {
      phrase: 'short-of-target',
      facts: { lacks: [{ germs: 'viruses', log: 1.655_01 }], target: 'purifier', logs: LOGS },
    },
    false,
  ],
])('says: %s', (text, said, changesWithUnits) => {
  expect(textOf(said)).toBe(text);
  expect(isReadersOwn(wordsOf(said))).toBe(changesWithUnits);
});
