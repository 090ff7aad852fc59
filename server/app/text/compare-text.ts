import type {
  ComparedCommodity,
  ComparedMass,
  ComparedRig,
  Comparison,
} from '../../contract/answers/compare.ts';
import { extractLines } from './extracts-text.ts';
import { edgeText } from './gap-table.ts';
import { figure, km, VERDICT_WORDS } from './lines/figures.ts';
import { plain, shortened } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';
import { cautionText } from './report-text.ts';

const NAME_WIDTH = 28;
const NOT_TOLD = 'not told';
/** A row of the table: what it is, its unit, and the cell of each rig. */
type Row = [what: string, unit: string, cell: (rig: ComparedRig) => string];

/** Several rigs as text for a terminal: a line for each figure, a column for each rig. */
export function compareText(comparison: Comparison): string {
  const { route, extracts, rigs, cautions, standing, notice } = comparison;
  const columns: Column[] = [
    { head: 'what', unit: '', lean: 'left' },
    { head: 'unit', unit: '', lean: 'left' },
    ...rigs.map((rig): Column => {
      return { head: shortened(plain(rig.name), NAME_WIDTH), unit: '', lean: 'right' };
    }),
  ];
  const cells = (rows: readonly Row[]) =>
    tableText(
      columns,
      rows.map(([what, unit, cell]) => [what, unit, ...rigs.map(cell)]),
    );
  const blocks = [
    ...(notice === null ? [] : [[notice]]),
    [
      `${plain(route.name)}: ${km(route.lengthKm)}, ${rigs.length === 1 ? '1 rig' : `${rigs.length} rigs`}`,
      ...extractLines(extracts),
    ],
    cells(ROWS),
    [
      'The worst gap is that of the worst verdict, of these the one of least margin. Masses are the worst of departure, all tanks and cans full, nothing left, and any place on the way.',
    ],
    ...rigs.filter((rig) => rig.cautions.length > 0).map(ownCautions),
    ['Cautions for every rig', ...[...cautions, ...standing].map((one) => `- ${cautionText(one)}`)],
  ];
  return `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

const ROWS: readonly Row[] = [
  ...commodityRows('fuel'),
  ...commodityRows('water'),
  ['days, slow pace', 'days', (rig) => figure(rig.days.slow)],
  ['days, typical pace', 'days', (rig) => figure(rig.days.typical)],
  ['mass, most', 'kg', ofMass((mass) => figure(mass.totalKg.value))],
  ['payload left, least', 'kg', ofMass((mass) => numberOr(mass.payloadLeftKg?.value))],
  ['front axle, most', 'kg', ofMass((mass) => axleText(mass.front))],
  ['rear axle, most', 'kg', ofMass((mass) => axleText(mass.rear))],
  ['right less left, most', 'kg', ofMass((mass) => numberOr(mass.sideKg?.value))],
  ['stability, least', 'track/2h', ofMass((mass) => numberOr(mass.stabilityFactor?.value, 2))],
];

function commodityRows(commodity: 'fuel' | 'water'): Row[] {
  const of = (text: (report: ComparedCommodity) => string) => (rig: ComparedRig) => text(rig[commodity]);
  const row = (what: string, unit: string, text: (report: ComparedCommodity) => string): Row => [
    `${commodity}: ${what}`,
    unit,
    of(text),
  ];
  return [
    row('in fixed tanks', 'l', (report) => figure(report.capacityL)),
    row('worst gap', 'km', ({ worst }) => `${figure(worst.from.atKm)} to ${figure(worst.to.atKm)}`),
    row('from', '', ({ worst }) => edgeText(worst.from)),
    row('to', '', ({ worst }) => edgeText(worst.to)),
    row(
      'verdict',
      '',
      ({ worst }) => VERDICT_WORDS[worst.verdict] + (worst.acrossNoData ? ', part without data' : ''),
    ),
    row('margin', 'l', ({ worst }) => figure(worst.marginL)),
    row('extra', 'l', (report) => (report.extraL > 0 ? figure(report.extraL) : '-')),
    row('extra cans (owned)', '', (report) =>
      report.extraCans > 0 ? `${report.extraCans} (${report.cansOwned})` : '-',
    ),
    row('gaps short or unknown', '', ({ verdicts }) => String(verdicts.short + verdicts.unknown)),
  ];
}

function ofMass(text: (mass: ComparedMass) => string): (rig: ComparedRig) => string {
  return (rig) => (rig.mass === null ? NOT_TOLD : text(rig.mass));
}

const numberOr = (value: number | undefined, digits = 1): string =>
  value === undefined ? NOT_TOLD : digits === 1 ? figure(value) : value.toFixed(digits);

function axleText(axle: ComparedMass['front']): string {
  if (axle === null) return NOT_TOLD;
  if (axle.leftKg === null) return `${figure(axle.kg)} (limit ${NOT_TOLD})`;
  return `${figure(axle.kg)} (${axle.leftKg < 0 ? `${figure(-axle.leftKg)} over` : `${figure(axle.leftKg)} left`})`;
}

const ownCautions = (rig: ComparedRig): string[] => [
  `Cautions for ${plain(rig.name)}`,
  ...rig.cautions.map((one) => `- ${cautionText(one)}`),
];
