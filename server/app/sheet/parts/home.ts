import type { Day } from '../../../contract/pace.ts';
import { positionAt } from '../../../core/route/passings/locate.ts';
import { printed } from '../../../words/printed.ts';
import type { ExportPack } from '../../export/pack.ts';
import { figure } from '../../text/lines/figures.ts';
import { plain } from '../../text/lines/plain.ts';
import { lengthText, placeText } from '../../text/lines/rounding.ts';
import { clock } from '../../text/plan/sheet-text.ts';
import { type Block, cell, row, type SheetColumn } from '../model/model.ts';
import { hasOpenLeg } from './answer.ts';
import { MOST_DAYS, nightText } from './days.ts';
import { edgeText, nameText, pointText, suppliesOf } from './places.ts';

const words = () => printed().paper.home;

const alarmColumns = (): readonly SheetColumn[] => [
  { ...words().alarmColumns.stop, lean: 'left', width: 40 },
  { ...words().alarmColumns.where, lean: 'left', width: 30 },
  { ...words().alarmColumns.by, lean: 'left', width: 30 },
];
const nightColumns = (): readonly SheetColumn[] => [
  { ...words().columns.day, lean: 'right', width: 7 },
  { ...words().columns.date, lean: 'left', width: 14 },
  { ...words().columns.night, lean: 'left', width: 39 },
  { ...words().columns.where, lean: 'left', width: 40 },
];

/** The page for somebody at home: which way, when, whom to call, and when to raise the alarm. */
export const homeBlocks = (pack: ExportPack): Block[] => [
  { kind: 'lines', lines: tripLines(pack) },
  ...alarmBlocks(pack),
  { kind: 'box', label: words().contacts, lines: words().blanks },
  { kind: 'lines', lines: telephoneLines(pack) },
  ...nightBlocks(pack),
];

function tripLines({ planned: { analysis, plan }, route }: ExportPack): string[] {
  const { rig, trip, days } = analysis;
  const departure = trip.departure ?? null;
  const ends = plan.sheet.at(-1)?.time.span ?? null;
  const takes = plan.totals?.days ?? days.elapsedDays.slow;
  return [
    words().route(plain(route.name), lengthText(analysis.route.lengthKm)),
    ...(rig.name === undefined ? [] : [words().vehicle(plain(rig.name))]),
    departure === null ? words().leavesUnknown : words().leaves(departure.slice(0, 10)),
    ...(ends === null ? [] : [words().arrives(clock(ends.earliest), clock(ends.latest))]),
    words().takes(figure(takes)),
    ...(plan.status === 'found' ? [] : [words().noPlan]),
    ...(hasOpenLeg(plan) || analysis.noData.length > 0 ? [words().unsure] : []),
  ];
}

/** After each water of the plan: the latest hour at which help, called then, comes while there is water. */
function alarmBlocks({ planned: { analysis, plan } }: ExportPack): Block[] {
  const { alarmHours, helpHours } = analysis.trip;
  const rows = plan.sheet.flatMap(({ water }) => {
    if (water === null || water.alarm === null) return [];
    const { at, alarm, lon, lat } = water;
    const { afterHours, by } = alarm;
    const hours = words().after(String(Math.floor(afterHours)));
    const text = afterHours < 0 ? words().tooLate : by === null ? hours : words().by(clock(by));
    return [
      row([
        cell(edgeText(at), { strong: true }),
        cell(lon === null || lat === null ? '' : pointText(lon, lat)),
        cell(text, { strong: true }),
      ]),
    ];
  });
  const agreed = words().agreed(
    alarmHours === undefined ? null : String(alarmHours),
    helpHours === undefined ? null : String(helpHours),
  );
  const lines = rows.length === 0 ? [words().noHours] : [agreed, words().times];
  return [
    { kind: 'headline', lines: [words().alarm] },
    ...(rows.length === 0 ? [] : [{ kind: 'table' as const, columns: alarmColumns(), rows }]),
    { kind: 'lines', lines: lines.filter((line) => line !== '') },
  ];
}

/** Telephones of the stops, each once. */
function telephoneLines({ planned: { plan } }: ExportPack): string[] {
  const numbers = plan.sheet.flatMap((halt) =>
    suppliesOf(halt).flatMap(({ supply: { at, contact, kind } }) =>
      contact === null || contact.phone === null
        ? []
        : [words().telephone(nameText(at.name ?? kind ?? ''), plain(contact.phone))],
    ),
  );
  if (numbers.length === 0) return [words().noStops];
  return [words().stops, ...new Set(numbers)];
}

function nightBlocks(pack: ExportPack): Block[] {
  const { days } = pack.planned.analysis;
  const more = days.rows.length - MOST_DAYS;
  return [
    { kind: 'lines', lines: [words().nights] },
    {
      kind: 'table',
      columns: nightColumns(),
      rows: days.rows.slice(0, MOST_DAYS).map((day) => nightRow(pack, day)),
    },
    ...(more > 0 ? [{ kind: 'lines' as const, lines: [words().more(more)] }] : []),
  ];
}

function nightRow({ route }: ExportPack, day: Day) {
  const { lon, lat } = positionAt(route, day.toKm * 1000);
  const where = `${placeText(day.toKm)}, ${pointText(lon, lat)}`;
  return row([
    cell(String(day.day), { strong: true }),
    cell(day.date ?? ''),
    cell(nightText(day)),
    cell(where),
  ]);
}
