import type { Day } from '../../../contract/pace.ts';
import { positionAt } from '../../../core/route/passings/locate.ts';
import { PRINTED } from '../../../words/printed.ts';
import type { ExportPack } from '../../export/pack.ts';
import { kmText } from '../../export/rounding.ts';
import { figure } from '../../text/lines/figures.ts';
import { plain } from '../../text/lines/plain.ts';
import { clock } from '../../text/plan/sheet-text.ts';
import { type Block, cell, row, type SheetColumn } from '../model/model.ts';
import { hasOpenLeg } from './answer.ts';
import { MOST_DAYS, nightText } from './days.ts';
import { edgeText, nameText, pointText, suppliesOf } from './places.ts';

const WORDS = PRINTED.paper.home;

const ALARM_COLUMNS: readonly SheetColumn[] = [
  { ...WORDS.alarmColumns.stop, lean: 'left', width: 40 },
  { ...WORDS.alarmColumns.where, lean: 'left', width: 30 },
  { ...WORDS.alarmColumns.by, lean: 'left', width: 30 },
];
const NIGHT_COLUMNS: readonly SheetColumn[] = [
  { ...WORDS.columns.day, lean: 'right', width: 7 },
  { ...WORDS.columns.date, lean: 'left', width: 14 },
  { ...WORDS.columns.night, lean: 'left', width: 39 },
  { ...WORDS.columns.where, lean: 'left', width: 40 },
];

/** The page for somebody at home: which way, when, whom to call, and when to raise the alarm. */
export const homeBlocks = (pack: ExportPack): Block[] => [
  { kind: 'lines', lines: tripLines(pack) },
  ...alarmBlocks(pack),
  { kind: 'box', label: WORDS.contacts, lines: WORDS.blanks },
  { kind: 'lines', lines: telephoneLines(pack) },
  ...nightBlocks(pack),
];

function tripLines({ planned: { analysis, plan }, route }: ExportPack): string[] {
  const { rig, trip, days } = analysis;
  const departure = trip.departure ?? null;
  const ends = plan.sheet.at(-1)?.time.span ?? null;
  const takes = plan.totals?.days ?? days.elapsedDays.slow;
  return [
    WORDS.route(plain(route.name), kmText(analysis.route.lengthKm)),
    ...(rig.name === undefined ? [] : [WORDS.vehicle(plain(rig.name))]),
    departure === null ? WORDS.leavesUnknown : WORDS.leaves(departure.slice(0, 10)),
    ...(ends === null ? [] : [WORDS.arrives(clock(ends.earliest), clock(ends.latest))]),
    WORDS.takes(figure(takes)),
    ...(plan.status === 'found' ? [] : [WORDS.noPlan]),
    ...(hasOpenLeg(plan) || analysis.noData.length > 0 ? [WORDS.unsure] : []),
  ];
}

/** After each water of the plan: the latest hour at which help, called then, comes while there is water. */
function alarmBlocks({ planned: { analysis, plan } }: ExportPack): Block[] {
  const { alarmHours, helpHours } = analysis.trip;
  const rows = plan.sheet.flatMap(({ water }) => {
    if (water === null || water.alarm === null) return [];
    const { at, alarm, lon, lat } = water;
    const { afterHours, by } = alarm;
    const hours = WORDS.after(String(Math.floor(afterHours)));
    const text = afterHours < 0 ? WORDS.tooLate : by === null ? hours : WORDS.by(clock(by));
    return [
      row([
        cell(edgeText(at), { strong: true }),
        cell(lon === null || lat === null ? '' : pointText(lon, lat)),
        cell(text, { strong: true }),
      ]),
    ];
  });
  const agreed = WORDS.agreed(
    alarmHours === undefined ? null : String(alarmHours),
    helpHours === undefined ? null : String(helpHours),
  );
  const lines = rows.length === 0 ? [WORDS.noHours] : [agreed, WORDS.times];
  return [
    { kind: 'headline', lines: [WORDS.alarm] },
    ...(rows.length === 0 ? [] : [{ kind: 'table' as const, columns: ALARM_COLUMNS, rows }]),
    { kind: 'lines', lines: lines.filter((line) => line !== '') },
  ];
}

/** Telephones of the stops, each once. */
function telephoneLines({ planned: { plan } }: ExportPack): string[] {
  const numbers = plan.sheet.flatMap((halt) =>
    suppliesOf(halt).flatMap(({ supply: { at, contact, kind } }) =>
      contact === null || contact.phone === null
        ? []
        : [WORDS.telephone(nameText(at.name ?? kind ?? ''), plain(contact.phone))],
    ),
  );
  if (numbers.length === 0) return [WORDS.noStops];
  return [WORDS.stops, ...new Set(numbers)];
}

function nightBlocks(pack: ExportPack): Block[] {
  const { days } = pack.planned.analysis;
  const more = days.rows.length - MOST_DAYS;
  return [
    { kind: 'lines', lines: [WORDS.nights] },
    {
      kind: 'table',
      columns: NIGHT_COLUMNS,
      rows: days.rows.slice(0, MOST_DAYS).map((day) => nightRow(pack, day)),
    },
    ...(more > 0 ? [{ kind: 'lines' as const, lines: [WORDS.more(more)] }] : []),
  ];
}

function nightRow({ route }: ExportPack, day: Day) {
  const { lon, lat } = positionAt(route, day.toKm * 1000);
  const where = `${PRINTED.export.at(kmText(day.toKm))}, ${pointText(lon, lat)}`;
  return row([
    cell(String(day.day), { strong: true }),
    cell(day.date ?? ''),
    cell(nightText(day)),
    cell(where),
  ]);
}
