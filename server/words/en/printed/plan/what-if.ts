import type { WhatIf } from '../../../../contract/whatif.ts';

const BASES: Record<WhatIf['basis'], string> = {
  plan: 'by the plan above',
  gaps: 'there is no plan: with full tanks at every supply that counts, cans empty',
};

/** Words of what happens when something goes wrong. Figures come in as they are set. */
export const WHAT_IF_WORDS = {
  head: (commodity: string, basis: WhatIf['basis']) => `What if, ${commodity} (${BASES[basis]})`,
  turnBack: 'Turn back, the first of fuel and water marked',
  everywhere: '- the supply behind can be regained from everywhere',
  matters: 'Which assumption matters most',
  goesTo: (isOn: boolean, { place, verdict }: { place: string; verdict: string }) =>
    `${isOn ? 'on' : 'back'} to ${place}: ${verdict}`,
  thereWith: (litres: string) => `there with ${litres}`,
  nothingLeft: (km: string) => `nothing is left at ${km}`,
  wouldKeep: (litres: string, cans: string) => `${litres} more (${cans}) would have kept the reserve`,
  byWayOf: (place: string) => `by way of ${place}`,
  backKeeps: (place: string) => ` Back from there to ${place} the reserve is kept.`,
  backLacks: (place: string, litres: string) =>
    ` Back from there to ${place} ${litres} are missing for the reserve.`,
  lastTurnBack: (km: string) => ` Last place to go back with the reserve: ${km}.`,
  at: (place: string) => `${place}: `,
  matter: (
    step: string,
    { commodity, before, after, change }: Record<'commodity' | 'before' | 'after' | 'change', string>,
  ) => `${step}: the least margin of ${commodity} goes from ${before} to ${after} (${change} l)`,
};
