import { describe, expect, test } from 'vitest';
import { openingHours } from '../../server/io/opening-hours.ts';

const PLACE = { lon: 88, lat: -35 };
/** Answers are kept by text and time: seconds, which no answer goes by, have each reckoned anew. */
let second = 0;
const answer = (text: string, earliest: string, latest = earliest) => {
  second += 1;
  return openingHours(text, PLACE, `${earliest}:${second}`, latest);
};

/** May 2027: the 3rd is a Monday. */
describe('examples of the OpenStreetMap wiki, pages Key:opening_hours and Key:opening_hours/specification', () => {
  test.each([
    ['24/7', '2027-05-03T03:00', true, 0],
    ['Mo-Fr 08:00-17:00', '2027-05-03T08:00', true, 0],
    ['Mo-Fr 08:00-17:00', '2027-05-03T07:15', false, 0.75],
    // Closing time is shut; Friday to Monday is 63 h.
    ['Mo-Fr 08:00-17:00', '2027-05-07T17:00', false, 63],
    [
      'Mo 10:00-12:00,12:30-15:00; Tu-Fr 08:00-12:00,12:30-15:00; Sa 08:00-12:00',
      '2027-05-03T12:10',
      false,
      1 / 3,
    ],
    [
      'Mo 10:00-12:00,12:30-15:00; Tu-Fr 08:00-12:00,12:30-15:00; Sa 08:00-12:00',
      '2027-05-08T11:59',
      true,
      0,
    ],
    ['Mo-Su 08:00-18:00; Apr 10-15 off; Jun 08:00-14:00; Aug off; Dec 25 off', '2027-06-01T15:00', false, 17],
    // Until 1 September at 8:00 it is twelve days from the 20th; from the 10th it is more than is looked ahead.
    [
      'Mo-Su 08:00-18:00; Apr 10-15 off; Jun 08:00-14:00; Aug off; Dec 25 off',
      '2027-08-20T08:00',
      false,
      288,
    ],
    [
      'Mo-Su 08:00-18:00; Apr 10-15 off; Jun 08:00-14:00; Aug off; Dec 25 off',
      '2027-08-10T08:00',
      false,
      null,
    ],
    ['Oct-Mar 07:30-19:30; Apr-Sep 07:00-21:00', '2027-05-03T20:30', true, 0],
    ['Oct-Mar 07:30-19:30; Apr-Sep 07:00-21:00', '2027-11-03T20:30', false, 11],
    ['Su-Tu 11:00-01:00, We-Th 11:00-03:00, Fr 11:00-06:00, Sa 11:00-07:00', '2027-05-04T00:30', true, 0],
    ['Mo-Sa 10:00-20:00; Tu off', '2027-05-04T12:00', false, 22],
    ['Sa 22:00+', '2027-05-08T22:30', null, null],
    ['sunrise-sunset', '2027-05-03T12:00', null, null],
    ['Mo-Fr 08:00-12:00 "by appointment"', '2027-05-03T09:00', null, null],
  ])('%s on %s', (text, at, open, waitHours) => {
    const found = answer(text, at);
    expect([found.open, found.unreadable]).toEqual([open, false]);
    if (waitHours === null) expect(found.waitHours).toBeNull();
    else expect(found.waitHours).toBeCloseTo(waitHours, 9);
  });
});

describe('arriving some time in a stretch', () => {
  test('open all of it, or the longest wait of any time in it', () => {
    expect(answer('Mo-Fr 08:00-17:00', '2027-05-03T09:00', '2027-05-03T16:59').open).toBe(true);
    expect(answer('Mo-Fr 08:00-17:00', '2027-05-03T16:00', '2027-05-04T09:00')).toMatchObject({
      open: false,
      waitHours: 15,
    });
    // From 7:30 on it is half an hour's wait, from 17:00 on fifteen hours'.
    expect(answer('Mo-Fr 08:00-17:00', '2027-05-03T07:30', '2027-05-03T16:00').waitHours).toBe(0.5);
    expect(answer('Mo-Fr 08:00-17:00', '2027-05-03T07:30', '2027-05-03T18:00').waitHours).toBe(15);
    // Two hours before it opens in the morning, one at noon: neither the first nor the last, but the longest.
    const noon = 'Mo-Fr 08:00-12:00,13:00-17:00';
    expect(answer(noon, '2027-05-03T06:00', '2027-05-03T12:30').waitHours).toBe(2);
    expect(answer(noon, '2027-05-03T07:30', '2027-05-03T12:30').waitHours).toBe(1);
  });

  test('a wait that ends in hours that may or may not hold is unknown', () => {
    const found = answer('Mo 08:00-12:00; Tu unknown', '2027-05-03T10:00', '2027-05-03T13:00');
    expect(found).toMatchObject({ open: false, waitHours: null });
  });
});

describe('rules for holidays are left out, and that is said', () => {
  test.each([
    ['Mo-Fr 08:00-17:00; PH off', '2027-05-06T10:00', true],
    ['Mo-Fr 08:00-17:00, PH off', '2027-05-06T10:00', true],
    ['Mo-Sa 08:00-20:00; PH,SH off', '2027-05-06T10:00', true],
    ['Mo-Fr 08:00-20:00; Sa,PH 10:00-12:00', '2027-05-08T11:00', true],
    ['Mo-Fr 08:00-20:00; PH,Su 10:00-12:00', '2027-05-09T11:00', true],
    ['PH,Mo-Fr 08:00-20:00', '2027-05-09T11:00', false],
    ['Mo-Fr 08:00-20:00; PH,SH 10:00-12:00', '2027-05-06T09:00', true],
    // The 9th is a Sunday, the 10th a Monday.
    ['Mo-Su 08:00-20:00; PH,SH,Su off', '2027-05-09T11:00', false],
    ['Mo-Su 08:00-20:00; PH, SH, Su off', '2027-05-09T11:00', false],
    ['Tu-Su 08:00-20:00; SH,PH,Mo 10:00-12:00', '2027-05-10T11:00', true],
    ['Mo-Su 08:00-20:00; SH, PH off', '2027-05-10T11:00', true],
  ])('%s', (text, at, open) => {
    const found = answer(text, at);
    expect(found.open).toBe(open);
    expect(found.comment).toContain('holidays are not reckoned');
  });

  test('nothing but holidays tells nothing', () => {
    expect(answer('PH 10:00-12:00', '2027-05-06T10:30')).toMatchObject({ open: null, unreadable: false });
    expect(answer('PH off; ', '2027-05-06T10:30')).toMatchObject({ open: null, unreadable: false });
  });

  test('a comment that only names them stays a comment', () => {
    const found = answer('Mo-Fr 08:00-17:00 open "also on PH"', '2027-05-03T09:00');
    expect(found).toMatchObject({ open: true, comment: 'also on PH' });
  });
});

test.each(['', 'foo bar', 'all day, ask at the shop', 'Mo-', '99:99-12:00', 'x'.repeat(2000), 'null', '"'])(
  'what cannot be read is said, never thrown: %j',
  (text) => {
    const found = answer(text, '2027-05-03T09:00');
    expect(found.open).not.toBe(true);
    expect(found.waitHours).toBeNull();
    expect(found.unreadable).toBe(true);
  },
);

let texts = 0;

test('a text that was never read before is read, with its comment', () => {
  texts += 1;
  expect(answer(`Mo-Fr 08:00-17:00 open "call ${texts}"`, '2027-05-03T09:00')).toEqual({
    open: true,
    waitHours: 0,
    opens: true,
    comment: `call ${texts}`,
    unreadable: false,
  });
});

test('only hours in the time of arrival count, not those that begin after it', () => {
  expect(answer('Mo 08:00-12:00; Tu unknown "ask"', '2027-05-03T09:00', '2027-05-03T11:00')).toMatchObject({
    open: true,
    comment: null,
  });
});

test('a text on which the package would go on for ever is not read', () => {
  expect(answer('2000000 ;Su ', '2027-05-03T09:00')).toMatchObject({
    open: null,
    opens: null,
    unreadable: true,
  });
  expect(answer('Mo 08:00-09:00,'.repeat(18), '2027-05-03T09:00').unreadable).toBe(true);
});

test.each([
  ['24/7', true],
  ['Mo-Fr 08:00-17:00', true],
  ['off', false],
  ['24/7 off', false],
  ['2019 Mo-Fr 08:00-17:00', false],
  ['Nov-Mar', false],
  ['May 16', true],
  ['May 20', false],
  ['"by appointment"', null],
])('%s opens at some time from 3 May to two weeks on: %s', (text, opens) => {
  expect(answer(text, '2027-05-03T09:00').opens).toBe(opens);
});

test('keeps what the package says of a text off the terminal', () => {
  const said: unknown[] = [];
  const { error, warn } = console;
  console.error = console.warn = (...words: unknown[]) => void said.push(...words);
  try {
    for (const text of ['Mo[5]-', '"', 'Jan 31-Feb 30 Mo', 'week 99', '10:00-', ';;', 'Mo-'])
      openingHours(text, { lon: 0, lat: 0 }, '2027-05-03T14:05', '2027-05-04T14:05');
  } finally {
    Object.assign(console, { error, warn });
  }
  expect(said).toEqual([]);
});
