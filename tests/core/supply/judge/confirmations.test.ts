import { expect, it } from 'vitest';
import { reportOn } from '../../../../server/core/supply/judge/confirmations.ts';
import { reasonsFrom } from '../../../../server/core/supply/tags/reasons.ts';

it('a report that it works holds for a term, and says from when it was and for how many days it held', () => {
  const works = { id: 'node/1', works: true, on: '2026-05-01' };
  expect(reportOn([works], 'fuel', '2026-05-31')).toMatchObject({ state: 'works' });
  const stale = reportOn([works], 'fuel', '2026-06-01');
  expect(stale.state).toBe('none');
  expect(reasonsFrom(stale.reasons)).toEqual([
    { code: 'confirmation-expired', facts: { findings: [{ on: '2026-05-01', days: 30 }] } },
  ]);
  expect(reasonsFrom(reportOn([works], 'water', '2026-05-16').reasons)).toEqual([
    { code: 'confirmation-expired', facts: { findings: [{ on: '2026-05-01', days: 14 }] } },
  ]);
});

it('reports ahead of the day are one reason, their days in order however they were given', () => {
  const ahead = ['2026-06-02', '2026-06-01', '2026-06-03'].map((on) => ({ id: 'node/1', works: true, on }));
  const findings = ['2026-06-01', '2026-06-02', '2026-06-03'].map((on) => ({ on }));
  for (const reports of [ahead, ahead.toReversed()])
    expect(reasonsFrom(reportOn(reports, 'fuel', '2026-05-01').reasons)).toEqual([
      { code: 'confirmation-ahead', facts: { findings } },
    ]);
});
