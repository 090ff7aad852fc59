import type { PlanEdge } from '../../../contract/plan.ts';
import type { Matter, WhatIf, WhatIfRow } from '../../../contract/whatif.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { PRINTED } from '../../../words/printed.ts';
import { checkLines } from '../lines/check-lines.ts';
import { figure, litres, VERDICT_WORDS } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';
import { placeText } from './place-text.ts';

const WORDS = PRINTED.whatIf;
const LINES = PRINTED.lines;

/** What happens when something goes wrong, what matters most, where to turn back, whom to telephone. */
export function whatIfLines({ basis, rows, matters, turnBacks, callFirst, cautions }: WhatIf): string[] {
  const lines: string[] = [];
  for (const commodity of COMMODITIES) {
    const own = rows.filter((row) => row.commodity === commodity);
    lines.push('', WORDS.head(LINES.commodity(commodity), basis), ...own.map((row) => `- ${rowText(row)}`));
  }
  lines.push('', WORDS.turnBack);
  for (const { text, first } of turnBacks) lines.push(`${first ? '*' : '-'} ${plain(text)}`);
  if (turnBacks.length === 0) lines.push(WORDS.everywhere);
  lines.push('', WORDS.matters);
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
    WORDS.goesTo(next === 'on', {
      place: placeText(next === 'on' ? row.to : row.from),
      verdict: VERDICT_WORDS[verdict],
    }),
    endsAtKm === null ? WORDS.thereWith(litres(arriveL)) : WORDS.nothingLeft(figure(endsAtKm)),
    ...(coverL === 0 ? [] : [WORDS.wouldKeep(litres(coverL), LINES.cans(coverCans))]),
    ...(instead === null || isSame(instead.at, row.to) ? [] : [WORDS.byWayOf(placeText(instead.at))]),
  ];
  const back = row.kind === 'stop-fails' && backMarginL !== null ? backText(row.from, backMarginL) : '';
  const until = turnBackKm === null ? '' : WORDS.lastTurnBack(figure(turnBackKm));
  const where = row.atKm === null ? '' : WORDS.at(figure(row.atKm));
  return `${where}${plain(row.text)} ${capital(parts.join('; '))}.${back}${until}`;
}

function backText(from: PlanEdge, marginL: number): string {
  const place = placeText(from);
  return marginL >= 0 ? WORDS.backKeeps(place) : WORDS.backLacks(place, litres(-marginL));
}

const isSame = (a: PlanEdge, b: PlanEdge): boolean => a.id === b.id && a.atKm === b.atKm;

const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

/** A change this small is not shown, litres. */
const NO_CHANGE_L = 0.05;

const matterText = ({ step, commodity, beforeL, afterL, changeL }: Matter): string =>
  WORDS.matter(step, {
    commodity: LINES.commodity(commodity),
    before: litres(beforeL),
    after: litres(afterL),
    change: `${changeL > 0 ? '+' : ''}${figure(changeL)}`,
  });
