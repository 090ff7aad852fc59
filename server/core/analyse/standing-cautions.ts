import type { Reason } from '../phrases/reasons.ts';

/** The cautions that every answer carries, whatever the route. */
export const STANDING_CAUTIONS: readonly Reason[] = [
  { code: 'planning-aid', facts: {} },
  { code: 'confirm-points', facts: {} },
  { code: 'carry-reserve', facts: {} },
  { code: 'drink', facts: {} },
  { code: 'treat-water', facts: {} },
  { code: 'fuel-cans', facts: {} },
  { code: 'masses', facts: {} },
  { code: 'tell-somebody', facts: {} },
  { code: 'local-law', facts: {} },
];
