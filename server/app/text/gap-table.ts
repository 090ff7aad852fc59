import type { Edge, Gap, Report } from '../../contract/analysis.ts';
import { EVIDENCE_WORDS, figure, km, litres, VERDICT_WORDS } from './figures.ts';
import { plain, shortened } from './plain.ts';
import { type Column, tableText } from './table-text.ts';

const NAME_WIDTH = 24;
const left = (head: string): Column => ({ head, unit: '', lean: 'left' });
const right = (head: string, unit: string): Column => ({ head, unit, lean: 'right' });

const COLUMNS: readonly Column[] = [
  right('gap', ''),
  left('from'),
  right('at', 'km'),
  left('to'),
  right('at', 'km'),
  right('length', 'km'),
  right('way', 'km'),
  right('time', 'days'),
  right('need', 'l'),
  right('reserve', 'l'),
  right('arrives', 'l'),
  right('margin', 'l'),
  left('verdict'),
  right('extra', 'l'),
  right('extra', 'cans'),
  right('turn back', 'at km'),
  left('weakest end'),
];

const EDGE_WORDS: Record<Edge['kind'], string> = { start: 'start', end: 'end', passing: 'unnamed' };

const edgeText = (edge: Edge) => shortened(plain(edge.name ?? edge.id ?? EDGE_WORDS[edge.kind]), NAME_WIDTH);

/** The gaps of one commodity as a table, and below it what the table has no column for. */
export function gapTable(report: Report): string[] {
  const table = tableText(
    COLUMNS,
    report.gaps.map((gap, index) => [
      String(index + 1),
      edgeText(gap.from),
      figure(gap.from.atKm),
      edgeText(gap.to),
      figure(gap.to.atKm),
      figure(gap.lengthKm),
      figure(gap.wayKm),
      figure(gap.days),
      figure(gap.needL),
      figure(gap.reserveL),
      figure(gap.arriveL),
      figure(gap.marginL),
      VERDICT_WORDS[gap.verdict] + (gap.acrossNoData ? ', part without data' : ''),
      gap.extraL > 0 ? figure(gap.extraL) : '-',
      gap.extraCans > 0 ? String(gap.extraCans) : '-',
      gap.turnBackKm === null ? 'none' : figure(gap.turnBackKm),
      gap.weakest === null ? '-' : EVIDENCE_WORDS[gap.weakest],
    ]),
  );
  return [...table, ...report.gaps.flatMap(gapNotes)];
}

function gapNotes(gap: Gap, index: number): string[] {
  const notes: string[] = [];
  const name = `gap ${index + 1}`;
  if (gap.verdict === 'short' && gap.runsDryKm !== null) {
    notes.push(`${name}: runs out at km ${figure(gap.runsDryKm)}`);
  }
  if (gap.skipHelps) notes.push(`${name}: leaving out one of its ends would better a verdict`);
  for (const rescue of gap.rescue.slice(0, 3)) {
    const why = rescue.reasons.map((reason) => plain(reason.text)).join('; ');
    const standing = rescue.counts ? '' : ` (does not count${why === '' ? '' : `: ${why}`})`;
    const what = `${plain(rescue.name ?? rescue.id)}, ${rescue.kind}, ${EVIDENCE_WORDS[rescue.evidence]}`;
    notes.push(
      `${name}: could be rescued at km ${figure(rescue.atKm)}, ${km(rescue.offRouteKm)} off the route: ${what}${standing}`,
    );
  }
  return notes;
}

/** What one commodity is carried in. */
export function carriedText(report: Report): string {
  const cans = report.cansOwned === 1 ? '1 can' : `${report.cansOwned} cans`;
  return `${litres(report.capacityL)} in the fixed tanks; ${cans} of ${litres(report.canL)} owned, reckoned empty`;
}
