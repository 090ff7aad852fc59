import { expect, it } from 'vitest';
import type { OpeningAnswer } from '../../../../server/core/input/opening-hours.ts';
import { type HoursFacts, judgeHours } from '../../../../server/core/supply/judge/judge-hours.ts';
import { Judgement } from '../../../../server/core/supply/judge/judgement.ts';

const UNTOLD: OpeningAnswer = { open: null, waitHours: null, opens: null, comment: null, unreadable: false };
const WINDOW = { earliest: '2027-05-03T00:00', latest: '2027-05-04T00:00' };

/** What is found where the reader answers so, first for the year and then for the days of arrival. */
function found(hours: string, answers: Partial<OpeningAnswer>[], window: HoursFacts['window'] = WINDOW) {
  const left = [...answers];
  const judgement = new Judgement('stated');
  judgeHours(
    { tags: { opening_hours: hours }, commodity: 'fuel', place: { lon: 88, lat: -35 }, fuels: [] },
    { read: () => ({ ...UNTOLD, ...left.shift() }), window, from: '2027-05-03' },
    judgement,
  );
  const [reason] = judgement.reasons;
  return [reason?.code, reason?.finding, judgement.evidence];
}

it('hours that can be read and do not tell weaken by a level, and are told from those that cannot be read', () => {
  const tag = 'opening_hours=Mo-Fr "by appointment"';
  const hours = 'Mo-Fr "by appointment"';
  expect(found(hours, [{}])).toEqual(['hours-unread', { hours: tag, unreadable: false }, 'implied']);
  expect(found(hours, [{ unreadable: true }])).toEqual([
    'hours-unread',
    { hours: tag, unreadable: true },
    'implied',
  ]);
});

it('hours by dates that open some time, and do not tell of the days of arrival, can be read all the same', () => {
  expect(found('May-Sep "ask"', [{ opens: true }, {}])).toEqual([
    'hours-unread',
    { hours: 'opening_hours=May-Sep "ask"', unreadable: false },
    'implied',
  ]);
  // Shut on all of these days and for longer than is looked ahead.
  expect(found('Jun-Sep', [{ opens: true }, { open: false, opens: false }])).toEqual([
    'out-of-season',
    { season: 'opening_hours=Jun-Sep', from: '2027-05-03', to: '2027-05-04' },
    'doubtful',
  ]);
});
