import type { Analysis } from '../../contract/analysis.ts';
import type { Caution } from '../../contract/common.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { commodityWord } from '../../words/answer/names.ts';
import { PRINTED } from '../../words/printed.ts';
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

const WORDS = PRINTED.report;

/** Ids named for each reason of passing something over; --json gives them all. */
const NAMED_SKIPPED = 5;

/** An analysis as text for a terminal: the answer first, then both tables, then cautions and what was skipped. */
export function reportText(analysis: Analysis, notice: string | null): string {
  const { route, answer, fuel, water, rig } = analysis;
  const blocks: string[][] = [];
  if (notice !== null) blocks.push([notice]);
  blocks.push([
    WORDS.route(plain(route.name), km(route.lengthKm), plain(rig.name ?? WORDS.unnamedRig)),
    ...extractLines(analysis.extracts),
    ...COMMODITIES.map((commodity) => {
      const report = analysis[commodity];
      const stretch = km(report.gaps[report.longest]!.lengthKm);
      const word = commodityWord(commodity, rig.fuel.kind);
      const sentences = answer[commodity].map(sentenceText).join(' ');
      if (analysis.noData.includes(commodity)) return sentences;
      return WORDS.longest(word, stretch, sentences);
    }),
  ]);
  blocks.push([WORDS.toDo, ...answer.todo.map(sentenceText).map((text) => `- ${text}`)]);
  blocks.push([WORDS.fuel(rig.fuel.kind, carriedText(fuel)), ...gapTable(fuel)]);
  blocks.push(supplyLines(analysis, 'fuel', fuel));
  blocks.push(fuelUseText(analysis.fuelUse));
  blocks.push([WORDS.water(carriedText(water)), ...gapTable(water)]);
  blocks.push(supplyLines(analysis, 'water', water));
  blocks.push(crewText(analysis.waterUse, water.gaps));
  blocks.push(treatmentLines(analysis.treatment));
  blocks.push(daysText(analysis));
  blocks.push(massText(analysis.mass));
  if (analysis.callFirst !== undefined) blocks.push(checkLines(analysis.callFirst));
  blocks.push(...closingBlocks(analysis));
  return `${blocks
    .filter((block) => block.length > 1 || block[0] === notice)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** Cautions, what was assumed and what was passed over; of the latter two nothing where there is none. */
function closingBlocks({ cautions, standing, assumptions, skipped }: Analysis): string[][] {
  const blocks = [
    [WORDS.cautions, ...[...cautions, ...standing].map((caution) => `- ${cautionText(caution)}`)],
  ];
  if (assumptions.length > 0) {
    const texts = assumptions.map(({ path, value, why }) => WORDS.assumption(path, plain(value), plain(why)));
    blocks.push([WORDS.assumed, ...texts.map((text) => `- ${text}`)]);
  }
  if (skipped.length > 0) blocks.push([WORDS.passedOver(skipped.length), ...skippedLines(skipped)]);
  return blocks;
}

/** A caution with its place along the route. */
export function cautionText({ text, fromKm, toKm }: Caution): string {
  if (fromKm === undefined) return plain(text);
  const said = plain(text);
  return toKm === undefined || toKm === fromKm
    ? WORDS.spot(figure(fromKm), said)
    : WORDS.stretch(figure(fromKm), figure(toKm), said);
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
    return `- ${plain(reason)}: ${named}${rest > 0 ? WORDS.furtherSkipped(rest) : ''}`;
  });
}
