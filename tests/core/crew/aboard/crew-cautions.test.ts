import { describe, expect, it } from 'vitest';
import type { Crew } from '../../../../server/contract/crew.ts';
import { crewCautions } from '../../../../server/core/crew/aboard/crew-cautions.ts';
import { WBGT_RANGE_C } from '../../../../server/core/crew/needs/wbgt.ts';
import { settleRig } from '../../../../server/core/rig/settle-rig.ts';
import { rigOf } from '../crews.ts';

const SAFE = {
  litres: 10,
  days: 1,
  hoursToHelp: null,
  safeL: 20,
  worstLoss: { phrase: 'can-lost', facts: {} },
  holds: true,
} as const;
type Hours = Parameters<typeof crewCautions>[1];

const cautionsOf = (crew: Crew, hours: Hours) => crewCautions(settleRig(rigOf(crew)).rig, hours, SAFE);

describe('what a crew should know of its water', () => {
  it('is which of the hours until help is there nobody told', () => {
    const missing = (alarmHours: number | null, helpHours: number | null) =>
      cautionsOf({ people: [{}] }, { alarmHours, helpHours }).find(
        ({ code }) => code === 'help-hours-unknown',
      );
    expect(missing(null, 24)).toMatchObject({ facts: { alarm: false, help: true } });
    expect(missing(12, null)).toMatchObject({ facts: { alarm: true, help: false } });
    expect(missing(12, 24)).toBeUndefined();
  });

  it('is that the heat was estimated outside the range of the estimate, whose ends are inside', () => {
    const isTold = (temperatureC: number) =>
      cautionsOf(
        { people: [{}], heat: { temperatureC, humidityPercent: 20 } },
        { alarmHours: 1, helpHours: 1 },
      ).some(({ code }) => code === 'wbgt-outside-range');
    const { from, to } = WBGT_RANGE_C;
    expect([from - 0.1, from, to, to + 0.1].map(isTold)).toEqual([true, false, false, true]);
  });
});
