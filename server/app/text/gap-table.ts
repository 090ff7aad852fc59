import type { Edge, Gap, Report } from '../../contract/analysis.ts';
import { EVIDENCE_WORDS, figure, km, litres, VERDICT_WORDS } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

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

/** The name of a gap's end, as wide as a table allows. */
export const edgeText = (edge: Edge): string =>
  shortened(plain(edge.name ?? edge.id ?? EDGE_WORDS[edge.kind]), NAME_WIDTH);

/** A table of more gaps than this is folded (ours: more than a screenful). */
const FOLD_FROM = 40;
/** Of these at least are shown singly in a folded table: the longest. */
const SHOWN_SINGLY = 20;

/** The gaps of one commodity as a table, and below it what the table has no column for. */
export function gapTable(report: Report): string[] {
  const { gaps } = report;
  const single = gaps.length > FOLD_FROM ? worthShowing(report) : null;
  const rows: string[][] = [];
  let folded: Gap[] = [];
  const unfold = (before: number) => {
    if (folded.length > 0) rows.push(foldedRow(folded, before));
    folded = [];
  };
  for (const [index, gap] of gaps.entries()) {
    if (single !== null && !single.has(index)) {
      folded.push(gap);
      continue;
    }
    unfold(index);
    rows.push(gapRow(gap, index));
  }
  unfold(gaps.length);
  const folding =
    single === null
      ? []
      : [
          `Runs of gaps that are enough are one line here, with the greatest length, way and need and the least margin among them; --json gives every gap.`,
        ];
  return [...tableText(COLUMNS, rows), ...folding, ...gaps.flatMap(gapNotes)];
}

/** Every gap that is not plainly enough, the longest ones, and the tightest. */
function worthShowing({ gaps, longest, tightest }: Report): Set<number> {
  const byLength = gaps.map((_, index) => index).sort((a, b) => gaps[b]!.lengthKm - gaps[a]!.lengthKm);
  const shown = new Set([longest, tightest, ...byLength.slice(0, SHOWN_SINGLY)]);
  for (const [index, gap] of gaps.entries()) {
    if (gap.verdict !== 'enough' || gap.acrossNoData || gap.skipHelps) shown.add(index);
  }
  return shown;
}

/** One row for a run of gaps that are all enough: the greatest of their lengths and the least of their margins. */
function foldedRow(run: readonly Gap[], before: number): string[] {
  const first = run[0]!;
  const last = run.at(-1)!;
  const row = new Array<string>(COLUMNS.length).fill('');
  row[0] = run.length === 1 ? String(before) : `${before - run.length + 1}-${before}`;
  row[1] = `(${run.length} enough, at most)`;
  row[2] = figure(first.from.atKm);
  row[4] = figure(last.to.atKm);
  row[5] = figure(Math.max(...run.map((gap) => gap.lengthKm)));
  row[6] = figure(Math.max(...run.map((gap) => gap.wayKm)));
  row[8] = figure(Math.max(...run.map((gap) => gap.needL)));
  row[11] = figure(Math.min(...run.map((gap) => gap.marginL)));
  row[12] = VERDICT_WORDS.enough;
  return row;
}

function gapRow(gap: Gap, index: number): string[] {
  return [
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
  ];
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
    const unseen = rescue.reasons.find(({ code }) => code === 'way-not-looked-at');
    const remark = unseen === undefined ? '' : ` (${plain(unseen.text)})`;
    const standing = rescue.counts ? remark : ` (does not count${why === '' ? '' : `: ${why}`})`;
    const what = `${plain(rescue.name ?? rescue.id)}, ${rescue.kind}, ${EVIDENCE_WORDS[rescue.evidence]}`;
    notes.push(
      `${name}: could be rescued at km ${figure(rescue.atKm)}, ${km(rescue.offRouteKm)} off the route: ${what}${standing}`,
    );
  }
  return notes;
}

/** What one commodity is carried in. */
export function carriedText(report: Report): string {
  if (!report.takesCans) return `${litres(report.capacityL)} in the fixed tanks; in no can, ever`;
  const cans = report.cansOwned === 1 ? '1 can' : `${report.cansOwned} cans`;
  return `${litres(report.capacityL)} in the fixed tanks; ${cans} of ${litres(report.canL)} owned, reckoned empty`;
}
