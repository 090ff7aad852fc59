import type { Caution } from '../../../contract/common.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';
import { extractLines } from '../../text/extracts-text.ts';
import { callText } from '../../text/lines/check-lines.ts';
import { plain } from '../../text/lines/plain.ts';
import { atPlace, kmText } from '../../text/lines/rounding.ts';
import { saidText } from '../../text/lines/said-text.ts';
import { rowText } from '../../text/plan/whatif-text.ts';
import type { Block } from '../model/model.ts';

const words = () => printed().paper.tables;

/** What is named of each list before the rest is counted (ours): all of them together are a page. */
const MOST_WHAT_IFS = 7;
const MOST_CHECKS = 12;
const MOST_CAUTIONS = 11;

const list = (items: readonly string[], toTick = false): Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items, toTick }];
const lines = (texts: readonly string[]): Block[] =>
  texts.length === 0 ? [] : [{ kind: 'lines', lines: texts }];

/** What goes wrong and takes more than there is, that first which does most harm; the rest counted. */
export function whatIfBlocks({ whatIf: { rows, cautions }, plan }: PlannedTrip): Block[] {
  const failing = rows
    .filter(({ verdict }) => verdict !== 'enough')
    .toSorted((a, b) => a.marginL - b.marginL);
  const borne = rows.length - failing.length;
  return [
    ...list(failing.slice(0, MOST_WHAT_IFS).map(rowText)),
    ...lines([
      ...(failing.length === 0 ? [words().whatIfs.all(rows.length)] : []),
      ...(failing.length > MOST_WHAT_IFS ? [printed().paper.page.more(failing.length - MOST_WHAT_IFS)] : []),
      ...(failing.length > 0 && borne > 0 ? [words().whatIfs.borne(borne)] : []),
      ...failureLines(plan.oneFailure),
      ...cautions.map(saidText),
    ]),
  ];
}

/** Nothing where it was not looked for, or not long enough. */
function failureLines(oneFailure: PlannedTrip['plan']['oneFailure']): string[] {
  if (oneFailure === null || oneFailure.status === 'out-of-time') return [];
  return oneFailure.status === 'found'
    ? [words().whatIfs.safe]
    : [words().whatIfs.notSafe, ...oneFailure.breaks.map(saidText)];
}

/** The list to check before leaving, with boxes to tick off. */
export function checkBlocks({ whatIf: { callFirst } }: PlannedTrip): Block[] {
  const more = callFirst.length - MOST_CHECKS;
  return [
    ...list(callFirst.slice(0, MOST_CHECKS).map(callText), true),
    ...lines([
      ...(callFirst.length === 0 ? [words().check.none] : []),
      ...(more > 0 ? [words().check.more(more)] : []),
    ]),
  ];
}

/** The cautions that every answer carries, then what this plan rests on, then those of the route. */
export function cautionBlocks({ analysis, plan }: PlannedTrip): Block[] {
  const own = [...new Set([...plan.restsOn, ...analysis.cautions].map(cautionText))];
  const more = own.length - MOST_CAUTIONS;
  return [
    ...lines([analysis.standing.map(({ text }) => plain(text)).join(' ')]),
    ...list(own.slice(0, MOST_CAUTIONS)),
    ...lines(more > 0 ? [words().cautions.more(more)] : []),
  ];
}

function cautionText(caution: Caution): string {
  const { fromKm, toKm } = caution;
  if (fromKm === undefined) return saidText(caution);
  const [from, to] = [kmText(fromKm), kmText(toKm ?? fromKm)];
  const where =
    from === to ? words().cautions.spot(atPlace(from)) : words().cautions.stretch(atPlace(from), to);
  return `${where}${saidText(caution)}`;
}

/** Of when each extract is, whom to credit and under what terms. */
export const dataBlocks = ({ analysis }: PlannedTrip): Block[] => [...lines(extractLines(analysis.extracts))];
