import { column } from './shared/columns.ts';

/** Words of the table of several rigs. Figures come in as they are set. */
export const COMPARISON_WORDS = {
  what: column('what'),
  unit: column('unit'),
  notTold: 'not told',
  head: (name: string, length: string, rigs: number) =>
    `${name}: ${length}, ${rigs === 1 ? '1 rig' : `${rigs} rigs`}`,
  explained:
    'The worst gap is that of the worst verdict, of these the one of least margin. Masses are the worst of departure, all tanks and cans full, nothing left, and any place on the way.',
  cautionsForAll: 'Cautions for every rig',
  cautionsFor: (rig: string) => `Cautions for ${rig}`,
  of: (commodity: string, what: string) => `${commodity}: ${what}`,
  inTanks: column('in fixed tanks', 'l'),
  worstGap: column('worst gap', 'km'),
  stretch: (from: string, to: string) => `${from} to ${to}`,
  from: column('from'),
  to: column('to'),
  verdict: column('verdict'),
  margin: column('margin', 'l'),
  extra: column('extra', 'l'),
  extraCans: column('extra cans (owned)'),
  cans: (extra: number, owned: number) => `${extra} (${owned})`,
  doubtfulGaps: column('gaps short or unknown'),
  slowDays: column('days, slow pace', 'days'),
  typicalDays: column('days, typical pace', 'days'),
  mostMass: column('mass, most', 'kg'),
  leastPayload: column('payload left, least', 'kg'),
  mostFront: column('front axle, most', 'kg'),
  mostRear: column('rear axle, most', 'kg'),
  mostSide: column('right less left, most', 'kg'),
  leastStability: column('stability, least', 'track/2h'),
  limitUntold: (kg: string) => `${kg} (limit not told)`,
  over: (kg: string, by: string) => `${kg} (${by} over)`,
  left: (kg: string, rest: string) => `${kg} (${rest} left)`,
};
