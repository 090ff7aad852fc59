import type { PlanEdge } from '../../../contract/plan.ts';
import type { Matter, WhatIf, WhatIfRow } from '../../../contract/whatif.ts';
import { checkLines } from '../lines/check-lines.ts';
import { figure, litres, VERDICT_WORDS } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';

const BASIS_WORDS: Record<WhatIf['basis'], string> = {
  plan: 'by the plan above',
  gaps: 'there is no plan: with full tanks at every supply that counts, cans empty',
};

/** What happens when something goes wrong, what matters most, where to turn back, whom to telephone. */
export function whatIfLines({ basis, rows, matters, turnBacks, callFirst, cautions }: WhatIf): string[] {
  const lines: string[] = [];
  for (const commodity of ['fuel', 'water'] as const) {
    const own = rows.filter((row) => row.commodity === commodity);
    lines.push('', `What if, ${commodity} (${BASIS_WORDS[basis]})`, ...own.map((row) => `- ${rowText(row)}`));
  }
  lines.push('', 'Turn back, the first of fuel and water marked');
  for (const { text, first } of turnBacks) lines.push(`${first ? '*' : '-'} ${plain(text)}`);
  if (turnBacks.length === 0) lines.push('- the supply behind can be regained from everywhere');
  lines.push('', 'Which assumption matters most');
  for (const matter of matters)
    if (Math.abs(matter.changeL) >= NO_CHANGE_L) lines.push(`- ${matterText(matter)}`);
  lines.push('', ...checkLines(callFirst));
  for (const { text } of cautions) lines.push(`- ${plain(text)}`);
  return lines;
}

const place = ({ kind, name, atKm }: PlanEdge): string =>
  `${plain(name ?? (kind === 'passing' ? 'a supply' : `the ${kind}`))} (km ${figure(atKm)})`;

function rowText(row: WhatIfRow): string {
  const { next, verdict, arriveL, endsAtKm, coverL, coverCans, turnBackKm, backMarginL, instead } = row;
  const parts = [
    `${next} to ${place(next === 'on' ? row.to : row.from)}: ${VERDICT_WORDS[verdict]}`,
    endsAtKm === null ? `there with ${litres(arriveL)}` : `nothing is left at km ${figure(endsAtKm)}`,
    ...(coverL === 0 ? [] : [`${litres(coverL)} more (${count(coverCans)}) would have kept the reserve`]),
    ...(instead === null || isSame(instead.at, row.to) ? [] : [`by way of ${place(instead.at)}`]),
  ];
  const back =
    row.kind === 'stop-fails' && backMarginL !== null
      ? ` Back from there to ${place(row.from)} ${backMarginL >= 0 ? 'the reserve is kept' : `${litres(-backMarginL)} are missing for the reserve`}.`
      : '';
  const until =
    turnBackKm === null ? '' : ` Last place to go back with the reserve: km ${figure(turnBackKm)}.`;
  const where = row.atKm === null ? '' : `km ${figure(row.atKm)}: `;
  return `${where}${plain(row.text)} ${capital(parts.join('; '))}.${back}${until}`;
}

const isSame = (a: PlanEdge, b: PlanEdge): boolean => a.id === b.id && a.atKm === b.atKm;

const count = (cans: number): string => `${cans} ${cans === 1 ? 'can' : 'cans'}`;
const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

/** A change this small is not shown, litres. */
const NO_CHANGE_L = 0.05;

const matterText = ({ step, commodity, beforeL, afterL, changeL }: Matter): string =>
  `${step}: the least margin of ${commodity} goes from ${litres(beforeL)} to ${litres(afterL)} (${changeL > 0 ? '+' : ''}${figure(changeL)} l)`;
