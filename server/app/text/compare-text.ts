import type {
  ComparedCommodity,
  ComparedMass,
  ComparedRig,
  Comparison,
} from '../../contract/answers/compare.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import type { ColumnHead } from '../../words/en/printed/shared/columns.ts';
import { PRINTED } from '../../words/printed.ts';
import { extractLines } from './extracts-text.ts';
import { edgeText, verdictText } from './gap-table.ts';
import { figure, km } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';
import { cautionText } from './report-text.ts';

const NAME_WIDTH = 28;
const WORDS = PRINTED.comparison;
const LINES = PRINTED.lines;
/** A row of the table: what it is, its unit, and the cell of each rig. */
type Row = [what: ColumnHead, cell: (rig: ComparedRig) => string];

/** Several rigs as text for a terminal: a line for each figure, a column for each rig. */
export function compareText(comparison: Comparison): string {
  const { route, extracts, rigs, cautions, standing, notice } = comparison;
  const columns: Column[] = [
    left(WORDS.what),
    left(WORDS.unit),
    ...rigs.map(({ name }) => right({ head: shortened(plain(name), NAME_WIDTH), unit: '' })),
  ];
  const cells = (rows: readonly Row[]) =>
    tableText(
      columns,
      rows.map(([{ head, unit }, cell]) => [head, unit, ...rigs.map(cell)]),
    );
  const blocks = [
    ...(notice === null ? [] : [[notice]]),
    [WORDS.head(plain(route.name), km(route.lengthKm), rigs.length), ...extractLines(extracts)],
    cells(ROWS),
    [WORDS.explained],
    ...rigs.filter((rig) => rig.cautions.length > 0).map(ownCautions),
    [WORDS.cautionsForAll, ...[...cautions, ...standing].map((one) => `- ${cautionText(one)}`)],
  ];
  return `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

const ROWS: readonly Row[] = [
  ...COMMODITIES.flatMap(commodityRows),
  [WORDS.slowDays, (rig) => figure(rig.days.slow)],
  [WORDS.typicalDays, (rig) => figure(rig.days.typical)],
  [WORDS.mostMass, ofMass((mass) => figure(mass.totalKg.value))],
  [WORDS.leastPayload, ofMass((mass) => numberOr(mass.payloadLeftKg?.value))],
  [WORDS.mostFront, ofMass((mass) => axleText(mass.front))],
  [WORDS.mostRear, ofMass((mass) => axleText(mass.rear))],
  [WORDS.mostSide, ofMass((mass) => numberOr(mass.sideKg?.value))],
  [WORDS.leastStability, ofMass((mass) => numberOr(mass.stabilityFactor?.value, 2))],
];

function commodityRows(commodity: 'fuel' | 'water'): Row[] {
  const of = (text: (report: ComparedCommodity) => string) => (rig: ComparedRig) => text(rig[commodity]);
  const row = ({ head, unit }: ColumnHead, text: (report: ComparedCommodity) => string): Row => [
    { head: WORDS.of(LINES.commodity(commodity), head), unit },
    of(text),
  ];
  return [
    row(WORDS.inTanks, (report) => figure(report.capacityL)),
    row(WORDS.worstGap, ({ worst }) => WORDS.stretch(figure(worst.from.atKm), figure(worst.to.atKm))),
    row(WORDS.from, ({ worst }) => edgeText(worst.from)),
    row(WORDS.to, ({ worst }) => edgeText(worst.to)),
    row(WORDS.verdict, ({ worst }) => verdictText(worst)),
    row(WORDS.margin, ({ worst }) => figure(worst.marginL)),
    row(WORDS.extra, (report) => (report.extraL > 0 ? figure(report.extraL) : '-')),
    row(WORDS.extraCans, ({ extraCans, cansOwned }) =>
      extraCans > 0 ? WORDS.cans(extraCans, cansOwned) : '-',
    ),
    row(WORDS.doubtfulGaps, ({ verdicts }) => String(verdicts.short + verdicts.unknown)),
  ];
}

function ofMass(text: (mass: ComparedMass) => string): (rig: ComparedRig) => string {
  return (rig) => (rig.mass === null ? WORDS.notTold : text(rig.mass));
}

const numberOr = (value: number | undefined, digits = 1): string =>
  value === undefined ? WORDS.notTold : digits === 1 ? figure(value) : value.toFixed(digits);

function axleText(axle: ComparedMass['front']): string {
  if (axle === null) return WORDS.notTold;
  const kg = figure(axle.kg);
  if (axle.leftKg === null) return WORDS.limitUntold(kg);
  return axle.leftKg < 0 ? WORDS.over(kg, figure(-axle.leftKg)) : WORDS.left(kg, figure(axle.leftKg));
}

const ownCautions = (rig: ComparedRig): string[] => [
  WORDS.cautionsFor(plain(rig.name)),
  ...rig.cautions.map((one) => `- ${cautionText(one)}`),
];
