import { GERM_CLASSES, type Logs, type TreatmentReport } from '../../contract/treatment.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure } from './lines/figures.ts';
import { plain } from './lines/plain.ts';

const WORDS = PRINTED.treatment;

const logs = (values: Logs): string =>
  GERM_CLASSES.map((germs) => WORDS.ofGerms(WORDS.germs[germs], figure(values[germs]))).join(', ');

/** The treatment line for a terminal: totals against the target, stages, taps, cartridges, sources. Empty without one. */
export function treatmentLines(report: TreatmentReport | null): string[] {
  if (report === null) return [];
  const outcome = report.meetsTarget
    ? WORDS.meetsTarget
    : WORDS.lacks(report.lacks.map(({ germs, log }) => ({ germs, log: figure(log) })));
  const treatable = report.sources.filter((source) => source.treatable).map((source) => source.kind);
  return [
    WORDS.head(report.at === 'filling', outcome),
    WORDS.clearWater(logs(report.logs), figure(report.maximumLog), {
      name: plain(report.target.name),
      logs: logs(report.target.logs),
    }),
    ...report.stages.map(stageLine),
    ...report.taps.map(tapLine),
    ...report.cartridges.map(cartridgeLine),
    WORDS.makesFit(treatable),
    ...unfitLines(report.sources),
  ];
}

/** The figures of a stage; where it counts for nothing, why. */
function stageLine({ name, logs: values, why }: TreatmentReport['stages'][number]): string {
  const counts = GERM_CLASSES.some((germs) => values[germs] > 0);
  return `- ${plain(name)}: ${counts ? logs(values) : why.map(plain).join('; ')}`;
}

/** The kinds of source that the line does not make fit, those with the same reasons in one line. */
function unfitLines(sources: TreatmentReport['sources']): string[] {
  const byReason = new Map<string, string[]>();
  for (const { kind, treatable, reasons } of sources) {
    if (treatable) continue;
    const reason = reasons.map(plain).join('; ');
    byReason.set(reason, [...(byReason.get(reason) ?? []), kind]);
  }
  return [...byReason].map(([reason, kinds]) => WORDS.unfit(kinds, reason));
}

function tapLine(tap: TreatmentReport['taps'][number]): string {
  const flow =
    tap.flowLPerMin === null
      ? WORDS.flowUnknown
      : `${WORDS.flow(figure(tap.flowLPerMin))}${WORDS.flowFrom[tap.flowFrom]}${tap.starves ? WORDS.starves : ''}`;
  return WORDS.tap(plain(tap.name), { use: tap.use, flow, reaches: tap.grade === 'drinking' });
}

function cartridgeLine(one: TreatmentReport['cartridges'][number]): string {
  const left =
    one.leftLitres === null
      ? WORDS.lifeUntold
      : one.leftLitres < 0
        ? WORDS.overLife(figure(-one.leftLitres))
        : WORDS.leftAfter(figure(one.leftLitres));
  return WORDS.cartridge(plain(one.name), figure(one.litres), left);
}
