import type { Analysis } from '../../contract/analysis.ts';
import type { Caution } from '../../contract/common.ts';
import { commodityWord } from '../../words/answer/names.ts';
import { crewText } from './crew-text.ts';
import { daysText } from './days-text.ts';
import { extractLines } from './extracts-text.ts';
import { fuelUseText } from './fuel-text.ts';
import { carriedText, gapTable } from './gap-table.ts';
import { checkLines } from './lines/check-lines.ts';
import { figure, km } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { sentenceText } from './lines/sentence-text.ts';
import { massText } from './mass-text.ts';
import { supplyLines } from './supplies-text.ts';
import { treatmentLines } from './treatment-text.ts';

/** Ids named for each reason of passing something over; --json gives them all. */
const NAMED_SKIPPED = 5;

/** An analysis as text for a terminal: the answer first, then both tables, then cautions and what was skipped. */
export function reportText(analysis: Analysis, notice: string | null): string {
  const { route, answer, fuel, water, rig } = analysis;
  const blocks: string[][] = [];
  if (notice !== null) blocks.push([notice]);
  blocks.push([
    `${plain(route.name)}: ${km(route.lengthKm)}, ${plain(rig.name ?? 'unnamed rig')}`,
    ...extractLines(analysis.extracts),
    ...(['fuel', 'water'] as const).map((commodity) => {
      const report = analysis[commodity];
      const stretch = km(report.gaps[report.longest]!.lengthKm);
      const word = commodityWord(commodity, rig.fuel.kind);
      const sentences = answer[commodity].map(sentenceText).join(' ');
      if (analysis.noData.includes(commodity)) return sentences;
      return `Longest stretch without ${word}: ${stretch}. ${sentences}`;
    }),
  ]);
  blocks.push(['What to do', ...answer.todo.map(sentenceText).map((text) => `- ${text}`)]);
  blocks.push([`Fuel (${rig.fuel.kind}): ${carriedText(fuel)}`, ...gapTable(fuel)]);
  blocks.push(supplyLines(analysis, 'fuel', fuel));
  blocks.push(fuelUseText(analysis.fuelUse));
  blocks.push([`Drinking water: ${carriedText(water)}`, ...gapTable(water)]);
  blocks.push(supplyLines(analysis, 'water', water));
  blocks.push(crewText(analysis.waterUse, water.gaps));
  blocks.push(treatmentLines(analysis.treatment));
  blocks.push(daysText(analysis));
  blocks.push(massText(analysis.mass));
  if (analysis.callFirst !== undefined) blocks.push(checkLines(analysis.callFirst));
  blocks.push([
    'Cautions',
    ...[...analysis.cautions, ...analysis.standing].map((caution) => `- ${cautionText(caution)}`),
  ]);
  if (analysis.assumptions.length > 0) {
    blocks.push([
      'Not said, so assumed',
      ...analysis.assumptions.map(({ path, value, why }) => `- ${path}: ${plain(value)}, ${plain(why)}`),
    ]);
  }
  if (analysis.skipped.length > 0) {
    blocks.push([`Passed over: ${analysis.skipped.length} objects`, ...skippedLines(analysis.skipped)]);
  }
  return `${blocks
    .filter((block) => block.length > 1 || block[0] === notice)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** A caution with its place along the route. */
export function cautionText({ text, fromKm, toKm }: Caution): string {
  if (fromKm === undefined) return plain(text);
  const place = toKm === undefined || toKm === fromKm ? '' : ` to ${figure(toKm)}`;
  return `km ${figure(fromKm)}${place}: ${plain(text)}`;
}

function skippedLines(skipped: Analysis['skipped']): string[] {
  const byReason = new Map<string, string[]>();
  for (const { id, reason } of skipped) {
    const ids = byReason.get(reason);
    if (ids === undefined) byReason.set(reason, [id]);
    else ids.push(id);
  }
  return [...byReason].map(([reason, ids]) => {
    const rest = ids.length - NAMED_SKIPPED;
    const named = ids.slice(0, NAMED_SKIPPED).map(plain).join(', ');
    return `- ${plain(reason)}: ${named}${rest > 0 ? ` and ${rest} more (--json names them all)` : ''}`;
  });
}
