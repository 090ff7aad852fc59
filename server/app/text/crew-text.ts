import type { Gap } from '../../contract/analysis.ts';
import type { WaterUse } from '../../contract/crew.ts';
import { figure, litres, VERDICT_WORDS } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

const left = (head: string): Column => ({ head, unit: '', lean: 'left' });
const right = (head: string, unit: string): Column => ({ head, unit, lean: 'right' });

const USE_COLUMNS: readonly Column[] = [
  left('use'),
  left('grade'),
  right('low', 'l a day'),
  right('typical', 'l a day'),
  right('high', 'l a day'),
];

type Bounds = WaterUse['litresPerDay'];

const bounds = ({ low, typical, high }: Bounds): string =>
  `${figure(low)}, ${figure(typical)} or ${figure(high)}`;

/**
 * Water use as text: litres a day by use and grade, how long they last, where the reserve is. For a rig that tells
 * litres a day alone only how long they last.
 */
export function crewText(use: WaterUse, gaps: readonly Gap[]): string[] {
  const lines = [
    'Water use (low, typical, high use)',
    `${bounds(use.litresPerDay)} l a day${use.from === 'crew' ? '' : ', your own figure'}; the ${litres(use.aboardL)} aboard at the start last ${bounds(use.enduranceDays)} days`,
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
  for (const grade of ['drinking', 'washing'] as const) {
    const { litresPerDay, aboardL, enduranceDays } = use.grades[grade];
    if (enduranceDays === null) continue;
    lines.push(
      `${grade} grade: ${bounds(litresPerDay)} l a day; ${litres(aboardL)} aboard can serve it, it lasts ${bounds(enduranceDays)} days`,
    );
  }
  if (use.notCarriedLitresPerDay.high > 0) {
    lines.push(`taken at the source, not carried: ${bounds(use.notCarriedLitresPerDay)} l a day`);
  }
  if (use.heat !== null) lines.push(heatLine(use.heat));
  lines.push(reserveLine(use.reserve), plain(use.treatText));
  for (const source of new Set(use.uses.map((one) => one.source))) lines.push(`- source: ${plain(source)}`);
  for (const [index, { grades }] of gaps.entries()) {
    if (grades === null || grades === undefined) continue;
    const { drinking, washing, washingTakenL } = grades;
    const taken = washingTakenL > 0 ? `, ${litres(washingTakenL)} taken on the way` : '';
    lines.push(
      `gap ${index + 1}: drinking grade needs ${litres(drinking.needL)}, margin ${litres(drinking.marginL)}, ${VERDICT_WORDS[drinking.verdict]}; washing grade needs ${litres(washing.needL)}${taken}, margin ${litres(washing.marginL)}, ${VERDICT_WORDS[washing.verdict]}`,
    );
  }
  return lines;
}

function heatLine(heat: NonNullable<WaterUse['heat']>): string {
  const how = heat.from === 'told' ? 'as told' : 'estimated';
  return `heat: WBGT ${figure(heat.wbgtC)} °C ${how}, category ${heat.category} of 5; drinking at rest × ${heat.restFactor.toFixed(2)}, and ${bounds(heat.litresPerWorkHour)} l for each of ${figure(heat.workHoursPerDay)} hours of ${heat.work} work (${plain(heat.why)})`;
}

function reserveLine({
  litres: held,
  days,
  hoursToHelp,
  safeL,
  worstLoss,
  holds,
}: WaterUse['reserve']): string {
  const help = hoursToHelp === null ? '' : `, ${figure(hoursToHelp)} hours to help`;
  return `reserve: ${litres(held)}, ${figure(days)} days of drinking grade${help}; ${litres(safeL)} are left when ${plain(worstLoss)} is lost, ${holds ? 'which holds it' : 'which does not hold it'}`;
}
