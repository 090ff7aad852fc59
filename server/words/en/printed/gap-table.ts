import { column } from './shared/columns.ts';

/** Words of the table of gaps. */
export const GAP_TABLE_WORDS = {
  columns: {
    gap: column('gap'),
    from: column('from'),
    fromKm: column('at', 'km'),
    to: column('to'),
    toKm: column('at', 'km'),
    length: column('length', 'km'),
    way: column('way', 'km'),
    time: column('time', 'days'),
    need: column('need', 'l'),
    reserve: column('reserve', 'l'),
    arrives: column('arrives', 'l'),
    margin: column('margin', 'l'),
    verdict: column('verdict'),
    extra: column('extra', 'l'),
    extraCans: column('extra', 'cans'),
    turnBack: column('turn back', 'at km'),
    weakest: column('weakest end'),
  },
  ends: { start: 'start', end: 'end', passing: 'unnamed' },
  folded:
    'Runs of gaps that are enough are one line here, with the greatest length, way and need and the least margin among them; --json gives every gap.',
  run: (count: number) => `(${count} enough, at most)`,
  noTurnBack: 'none',
  gap: (number: number) => `gap ${number}`,
  runsOut: (gap: string, km: string) => `${gap}: runs out at km ${km}`,
  skipHelps: (gap: string) => `${gap}: leaving out one of its ends would better a verdict`,
  rescue: (gap: string, { km, off, what }: { km: string; off: string; what: string }) =>
    `${gap}: could be rescued at km ${km}, ${off} off the route: ${what}`,
  doesNotCount: (why: string) => ` (does not count${why === '' ? '' : `: ${why}`})`,
  noCans: (capacity: string) => `${capacity} in the fixed tanks; in no can, ever`,
  carried: (capacity: string, { cans, size }: { cans: string; size: string }) =>
    `${capacity} in the fixed tanks; ${cans} of ${size} owned, reckoned empty`,
};
