import type { Edge, Gap, Report } from '../../contract/analysis.ts';
import { PRINTED } from '../../words/printed.ts';
import { EVIDENCE_WORDS, figure, km, litres, VERDICT_WORDS } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const NAME_WIDTH = 24;
const WORDS = PRINTED.gapTable;
const HEADS = WORDS.columns;

const COLUMNS: readonly Column[] = [
  right(HEADS.gap),
  left(HEADS.from),
  right(HEADS.fromKm),
  left(HEADS.to),
  right(HEADS.toKm),
  right(HEADS.length),
  right(HEADS.way),
  right(HEADS.time),
  right(HEADS.need),
  right(HEADS.reserve),
  right(HEADS.arrives),
  right(HEADS.margin),
  left(HEADS.verdict),
  right(HEADS.extra),
  right(HEADS.extraCans),
  right(HEADS.turnBack),
  left(HEADS.weakest),
];

/** The name of a gap's end, as wide as a table allows. */
export const edgeText = (edge: Edge): string =>
  shortened(plain(edge.name ?? edge.id ?? WORDS.ends[edge.kind]), NAME_WIDTH);

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
  const folding = single === null ? [] : [WORDS.folded];
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
  row[1] = WORDS.run(run.length);
  row[2] = figure(first.from.atKm);
  row[4] = figure(last.to.atKm);
  row[5] = figure(Math.max(...run.map((gap) => gap.lengthKm)));
  row[6] = figure(Math.max(...run.map((gap) => gap.wayKm)));
  row[8] = figure(Math.max(...run.map((gap) => gap.needL)));
  row[11] = figure(Math.min(...run.map((gap) => gap.marginL)));
  row[12] = VERDICT_WORDS.enough;
  return row;
}

/** The verdict on a gap, and whether part of it is on no map. */
export function verdictText({ verdict, acrossNoData }: Pick<Gap, 'verdict' | 'acrossNoData'>): string {
  const word = VERDICT_WORDS[verdict];
  return acrossNoData ? PRINTED.lines.partWithoutData(word) : word;
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
    verdictText(gap),
    gap.extraL > 0 ? figure(gap.extraL) : '-',
    gap.extraCans > 0 ? String(gap.extraCans) : '-',
    gap.turnBackKm === null ? WORDS.noTurnBack : figure(gap.turnBackKm),
    gap.weakest === null ? '-' : EVIDENCE_WORDS[gap.weakest],
  ];
}

function gapNotes(gap: Gap, index: number): string[] {
  const notes: string[] = [];
  const name = WORDS.gap(index + 1);
  if (gap.verdict === 'short' && gap.runsDryKm !== null) {
    notes.push(WORDS.runsOut(name, figure(gap.runsDryKm)));
  }
  if (gap.skipHelps) notes.push(WORDS.skipHelps(name));
  for (const rescue of gap.rescue.slice(0, 3)) {
    const why = rescue.reasons.map((reason) => plain(reason.text)).join('; ');
    const unseen = rescue.reasons.find(({ code }) => code === 'way-not-looked-at');
    const remark = unseen === undefined ? '' : ` (${plain(unseen.text)})`;
    const standing = rescue.counts ? remark : WORDS.doesNotCount(why);
    const what = `${plain(rescue.name ?? rescue.id)}, ${rescue.kind}, ${EVIDENCE_WORDS[rescue.evidence]}`;
    const place = { km: figure(rescue.atKm), off: km(rescue.offRouteKm), what };
    notes.push(`${WORDS.rescue(name, place)}${standing}`);
  }
  return notes;
}

/** What one commodity is carried in. */
export function carriedText(report: Report): string {
  if (!report.takesCans) return WORDS.noCans(litres(report.capacityL));
  const cans = PRINTED.lines.cans(report.cansOwned);
  return WORDS.carried(litres(report.capacityL), { cans, size: litres(report.canL) });
}
