import { InputProblem } from '../../core/input/problem.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { BEFORE_DEPARTURE_DAYS } from '../../core/supply/judge/confirmations.ts';
import { PRINTED } from '../../words/printed.ts';
import { kmText } from '../text/lines/rounding.ts';
import { creditOf } from './credit.ts';
import type { ExportPack } from './pack.ts';

const WORDS = PRINTED.export.calendar;

/** Days before leaving on which all is to be confirmed at the latest (ours). */
const CONFIRM_BY_DAYS = 7;

/** An entry of the calendar: a whole day, or a moment of local time. */
interface Entry {
  readonly title: string;
  readonly words: string;
  /** "2027-05-03" or "2027-05-03T14:05": local time, of no zone. */
  readonly at: string;
}

/**
 * iCalendar (RFC 5545): the days of the drive, from when confirmations hold and by when all is to be confirmed, and the
 * moments at which somebody at home calls for help. Throws InputProblem where no departure is told.
 */
export function icsFile(pack: ExportPack): string {
  const stamp = `${pack.made.replaceAll('-', '')}T000000Z`;
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Drystage//Drystage//EN',
    'CALSCALE:GREGORIAN',
    ...entriesOf(pack).flatMap((entry, number) =>
      eventLines(entry, { number, stamp, name: pack.route.name }),
    ),
    'END:VCALENDAR',
  ]
    .map(folded)
    .join('');
}

function entriesOf({ planned, ...pack }: ExportPack): Entry[] {
  const { analysis, plan } = planned;
  const { departure } = analysis.trip;
  if (departure === undefined)
    throw new InputProblem({
      code: 'trip-invalid',
      place: '/departure',
      came: 'a trip without a day of departure',
      expected: 'departure: a date such as 2027-05-03',
      remedy: 'Say when the trip begins: a calendar has no other days to show',
    });
  const credit = creditOf({ planned, ...pack });
  const days = analysis.days.rows.flatMap(({ day, date, fromKm, toKm, halt }): Entry[] =>
    date === null
      ? []
      : [
          {
            at: date,
            title: WORDS.day(day, kmText(fromKm), kmText(toKm), halt.name ?? PRINTED.days.halts[halt.kind]),
            words: credit,
          },
        ],
  );
  const toConfirm = planned.whatIf.callFirst.map(({ where }) => where).join('\n');
  const confirm = [
    ...COMMODITIES.map((commodity) => ({
      at: dayBefore(departure, BEFORE_DEPARTURE_DAYS[commodity]),
      title: WORDS.confirmFrom(commodity, BEFORE_DEPARTURE_DAYS[commodity]),
      words: toConfirm,
    })),
    { at: dayBefore(departure, CONFIRM_BY_DAYS), title: WORDS.confirm, words: toConfirm },
  ];
  const alarms = plan.sheet.flatMap(({ water }): Entry[] => {
    const by = water?.alarm?.by ?? null;
    return water === null || by === null
      ? []
      : [
          {
            at: by,
            title: WORDS.alarm(water.at.name ?? water.kind ?? PRINTED.export.at(kmText(water.at.atKm))),
            words: credit,
          },
        ];
  });
  return [...confirm, ...days, ...alarms].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

const DAY_MS = 86_400_000;

const dayBefore = (date: string, days: number): string =>
  new Date(Date.parse(`${date.slice(0, 10)}T00:00:00Z`) - days * DAY_MS).toISOString().slice(0, 10);

function eventLines(
  { at, title, words }: Entry,
  { number, stamp, name }: { number: number; stamp: string; name: string },
): string[] {
  const bare = at.replaceAll(/[-:]/g, '');
  const isDay = !at.includes('T');
  return [
    'BEGIN:VEVENT',
    `UID:${bare}-${number}-${uidText(name)}@drystage`,
    `DTSTAMP:${stamp}`,
    isDay ? `DTSTART;VALUE=DATE:${bare}` : `DTSTART:${bare.padEnd(15, '0')}`,
    `SUMMARY:${escaped(title)}`,
    ...(words === '' ? [] : [`DESCRIPTION:${escaped(words)}`]),
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

const uidText = (name: string): string => name.replaceAll(/[^\p{L}\p{N}]+/gu, '-').slice(0, 40);

/** RFC 5545, 3.3.11. Control characters, which no text may hold, are blanks. */
const escaped = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r?\n/g, '\\n')
    .replaceAll(/\p{Cc}/gu, ' ');

/** Octets of a line at most (RFC 5545, 3.1); what follows goes on after a blank. */
const LINE_OCTETS = 75;

function folded(line: string): string {
  const encoder = new TextEncoder();
  const lines: string[] = [];
  let now = '';
  let octets = 0;
  for (const sign of line) {
    const size = encoder.encode(sign).length;
    if (octets + size > LINE_OCTETS) {
      lines.push(now);
      now = ' ';
      octets = 1;
    }
    now += sign;
    octets += size;
  }
  return `${[...lines, now].join('\r\n')}\r\n`;
}
