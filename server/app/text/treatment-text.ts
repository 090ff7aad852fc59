import { GERM_CLASSES, type Logs, type TreatmentReport } from '../../contract/treatment.ts';
import { figure } from './lines/figures.ts';
import { plain } from './lines/plain.ts';

const logs = (values: Logs): string =>
  GERM_CLASSES.map((germs) => `${germs} ${figure(values[germs])}`).join(', ');

const FLOW_WORDS = { measured: ' (measured)', estimate: ' (estimate)', unknown: '' } as const;

/** The treatment line for a terminal: totals against the target, stages, taps, cartridges, sources. Empty without one. */
export function treatmentLines(report: TreatmentReport | null): string[] {
  if (report === null) return [];
  const outcome = report.meetsTarget
    ? 'meets its target'
    : `falls short of its target by ${report.lacks.map(({ germs, log }) => `${figure(log)} log of ${germs}`).join(', ')}`;
  const treatable = report.sources.filter((source) => source.treatable).map((source) => source.kind);
  return [
    `Treatment line (${report.at === 'filling' ? 'on filling' : 'at the tap'}): ${outcome}`,
    `Clear water: ${logs(report.logs)} log of at most ${figure(report.maximumLog)}; target ${plain(report.target.name)}: ${logs(report.target.logs)}`,
    ...report.stages.map(stageLine),
    ...report.taps.map(tapLine),
    ...report.cartridges.map(cartridgeLine),
    `Makes fit without a note of yours: ${treatable.length === 0 ? 'no kind of source' : treatable.join(', ')}`,
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
  return [...byReason].map(([reason, kinds]) => `- not ${kinds.join(', ')}: ${reason}`);
}

function tapLine(tap: TreatmentReport['taps'][number]): string {
  const flow =
    tap.flowLPerMin === null
      ? 'flow not known'
      : `${figure(tap.flowLPerMin)} l/min${FLOW_WORDS[tap.flowFrom]}${tap.starves ? ', starves' : ''}`;
  return `Tap ${plain(tap.name)} (${tap.use}): ${flow}, ${tap.grade === 'drinking' ? 'reaches the target' : 'short of the target'}`;
}

function cartridgeLine(one: TreatmentReport['cartridges'][number]): string {
  const left =
    one.leftLitres === null
      ? 'life not told'
      : one.leftLitres < 0
        ? `${figure(-one.leftLitres)} l more than it has left`
        : `${figure(one.leftLitres)} l left after it`;
  return `Cartridge ${plain(one.name)}: ${figure(one.litres)} l on this trip, ${left}`;
}
