import type { Gap } from '../../contract/analysis.ts';
import type { GradeFigures, WaterUse } from '../../contract/crew.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure, litres, VERDICT_WORDS } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const WORDS = PRINTED.crew;
const HEADS = WORDS.columns;

const GRADES = ['drinking', 'washing'] as const;

const USE_COLUMNS: readonly Column[] = [
  left(HEADS.use),
  left(HEADS.grade),
  right(HEADS.low),
  right(HEADS.typical),
  right(HEADS.high),
];

type Bounds = WaterUse['litresPerDay'];

const bounds = ({ low, typical, high }: Bounds): string =>
  WORDS.bounds(figure(low), figure(typical), figure(high));

/**
 * Water use as text: litres a day by use and grade, how long they last, where the reserve is. For a rig that tells
 * litres a day alone only how long they last.
 */
export function crewText(use: WaterUse, gaps: readonly Gap[]): string[] {
  const lines = [
    WORDS.head,
    WORDS.use(bounds(use.litresPerDay), {
      isOwn: use.from !== 'crew',
      aboard: litres(use.aboardL),
      days: bounds(use.enduranceDays),
    }),
  ];
  if (use.grades === null) return lines;
  lines.push(
    ...tableText(
      USE_COLUMNS,
      use.uses.map(({ use: name, grade, litresPerDay: { low, typical, high } }) => [
        name,
        grade,
        figure(low),
        figure(typical),
        figure(high),
      ]),
    ),
  );
  for (const grade of GRADES) {
    const { litresPerDay, aboardL, enduranceDays } = use.grades[grade];
    if (enduranceDays === null) continue;
    lines.push(
      WORDS.ofGrade(WORDS.grades[grade], {
        perDay: bounds(litresPerDay),
        aboard: litres(aboardL),
        days: bounds(enduranceDays),
      }),
    );
  }
  if (use.notCarriedLitresPerDay.high > 0) {
    lines.push(WORDS.notCarried(bounds(use.notCarriedLitresPerDay)));
  }
  if (use.heat !== null) lines.push(heatLine(use.heat));
  lines.push(reserveLine(use.reserve), plain(use.treatText));
  for (const source of new Set(use.uses.map((one) => one.source))) lines.push(WORDS.source(plain(source)));
  for (const [index, { grades }] of gaps.entries()) {
    if (grades === null || grades === undefined) continue;
    const { drinking, washing, washingTakenL } = grades;
    const taken = washingTakenL > 0 ? WORDS.taken(litres(washingTakenL)) : '';
    lines.push(WORDS.gap(index + 1, gradeWords(drinking), { ...gradeWords(washing), taken }));
  }
  return lines;
}

const gradeWords = ({ needL, marginL, verdict }: GradeFigures) => ({
  need: litres(needL),
  margin: litres(marginL),
  verdict: VERDICT_WORDS[verdict],
});

function heatLine(heat: NonNullable<WaterUse['heat']>): string {
  return WORDS.heat(heat, {
    wbgt: figure(heat.wbgtC),
    rest: heat.restFactor.toFixed(2),
    perHour: bounds(heat.litresPerWorkHour),
    hours: figure(heat.workHoursPerDay),
    why: plain(heat.why),
  });
}

function reserveLine({
  litres: held,
  days,
  hoursToHelp,
  safeL,
  worstLoss,
  holds,
}: WaterUse['reserve']): string {
  const help = hoursToHelp === null ? '' : WORDS.hoursToHelp(figure(hoursToHelp));
  return WORDS.reserve(litres(held), {
    days: figure(days),
    help,
    safe: litres(safeL),
    worst: plain(worstLoss),
    holds,
  });
}
