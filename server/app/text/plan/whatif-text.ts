import type { PlanEdge } from '../../../contract/plan.ts';
import type { Matter, WhatIf, WhatIfRow } from '../../../contract/whatif.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { printed } from '../../../words/printed.ts';
import { checkLines } from '../lines/check-lines.ts';
import { figure, litres, place } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { saidText } from '../lines/said-text.ts';
import { placeText } from './place-text.ts';

const words = () => printed().whatIf;
const lineWords = () => printed().lines;

/** What happens when something goes wrong, what matters most, where to turn back, whom to telephone. */
export function whatIfLines({ basis, rows, matters, turnBacks, callFirst, cautions }: WhatIf): string[] {
  const lines: string[] = [];
  for (const commodity of COMMODITIES) {
    const own = rows.filter((row) => row.commodity === commodity);
    lines.push(
      '',
      words().head(lineWords().commodity(commodity), basis),
      ...own.map((row) => `- ${rowText(row)}`),
    );
  }
  lines.push('', words().turnBack);
  for (const { text, first } of turnBacks) lines.push(`${first ? '*' : '-'} ${plain(text)}`);
  if (turnBacks.length === 0) lines.push(words().everywhere);
  lines.push('', words().matters);
  for (const matter of matters)
    if (Math.abs(matter.changeL) >= NO_CHANGE_L) lines.push(`- ${matterText(matter)}`);
  lines.push('', ...checkLines(callFirst));
  for (const { text } of cautions) lines.push(`- ${plain(text)}`);
  return lines;
}

/** What happens, what then does best, and until where one can still go back. */
export function rowText(row: WhatIfRow): string {
  const { next, verdict, arriveL, endsAtKm, coverL, coverCans, turnBackKm, backMarginL, instead } = row;
  const parts = [
    words().goesTo(next === 'on', {
      place: placeText(next === 'on' ? row.to : row.from),
      verdict: lineWords().verdicts[verdict],
    }),
    endsAtKm === null ? words().thereWith(litres(arriveL)) : words().nothingLeft(place(endsAtKm)),
    ...(coverL === 0 ? [] : [words().wouldKeep(litres(coverL), lineWords().cans(coverCans))]),
    ...(instead === null || isSame(instead.at, row.to) ? [] : [words().byWayOf(placeText(instead.at))]),
  ];
  const back = row.kind === 'stop-fails' && backMarginL !== null ? backText(row.from, backMarginL) : '';
  const until = turnBackKm === null ? '' : words().lastTurnBack(place(turnBackKm));
  const where = row.atKm === null ? '' : words().at(place(row.atKm));
  return `${where}${saidText(row)} ${capital(parts.join('; '))}.${back}${until}`;
}

function backText(from: PlanEdge, marginL: number): string {
  const place = placeText(from);
  return marginL >= 0 ? words().backKeeps(place) : words().backLacks(place, litres(-marginL));
}

const isSame = (a: PlanEdge, b: PlanEdge): boolean => a.id === b.id && a.atKm === b.atKm;

const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

/** A change this small is not shown, litres. */
const NO_CHANGE_L = 0.05;

const matterText = ({ step, commodity, beforeL, afterL, changeL }: Matter): string =>
  words().matter(step, {
    commodity: lineWords().commodity(commodity),
    before: litres(beforeL),
    after: litres(afterL),
    change: `${changeL > 0 ? '+' : ''}${figure(changeL)}`,
  });
