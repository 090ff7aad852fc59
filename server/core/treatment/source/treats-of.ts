import type { SourceKind, WaterNote } from '../../../contract/treatment.ts';
import type { Tags } from '../../input/sources.ts';
import type { FillingTime } from '../../phrases/rig/treatment-waters.ts';
import type { LineVerdict, Treats } from '../../supply/judge/treats.ts';
import { saidBy } from '../../supply/tags/said-by.ts';
import { timeToFill } from '../line/flow/time-to-fill.ts';
import { CLEAR_WATER } from '../line/line-effect.ts';
import { tapResults } from '../line/taps.ts';
import type { Treatment } from '../line/treatment.ts';
import { judgeSource, type SourceVerdict } from './judge-source.ts';
import { sourceKindOf } from './source-kind.ts';
import { drinkingFlow } from './treatment-report.ts';
import { type Noted, noted } from './water-notes.ts';

/** What treating a source depends on beside the line. */
export interface TreatingFacts {
  line: Treatment | null;
  notes: readonly WaterNote[];
  /** ISO date for which notes are judged. */
  on: string;
  /** Highest place of the route, metres; null when not known. */
  altitudeM: number | null;
  /** Drawable litres of the fixed tanks. */
  tankL: number;
  ropeAndBucket: boolean;
  /** The most that is drunk in a day, litres. */
  drunkLPerDay: number;
}

/** The judge of waters for a rig and a trip; undefined where there is neither a line nor a note. */
export function treatsOf(facts: TreatingFacts): Treats | undefined {
  const { line, notes, altitudeM } = facts;
  if (line === null && notes.length === 0) return undefined;
  const notesById = new Map<string, WaterNote[]>();
  for (const note of notes) notesById.set(note.id, [...(notesById.get(note.id) ?? []), note]);
  const taps = line === null ? [] : tapResults(line, { ...CLEAR_WATER, altitudeM });
  const flowLPerMin = drinkingFlow(taps.map((tap) => tap.report));
  const tooLittle = slowLine(flowLPerMin, facts.drunkLPerDay);
  // Extracts hold many waters of few kinds: those of which nothing else is known are judged once.
  const verdicts = new Map<SourceKind, SourceVerdict>();
  return (source) => {
    const ours = source.ids.flatMap((id) => notesById.get(id) ?? []);
    const note = noted(ours, facts.on);
    const known = {
      salt: note.salt,
      saltOn: note.on,
      saltSaid: saidBy(note.latest ?? {}),
      filling: fillingTime(facts, note),
    };
    if (line === null) return { ...known, line: null, treatEverything: false };
    const kind = note.latest?.source ?? sourceKindOf(source.ruleKey, source.tags);
    const top = higher(altitudeM, source.tags);
    const plain = top === altitudeM && ours.length === 0;
    const verdict =
      (plain ? verdicts.get(kind) : undefined) ??
      judgeSource(line, kind, { altitudeM: top, flowLPerMin }, note);
    if (plain) verdicts.set(kind, verdict);
    return {
      ...known,
      line: tooLittle ?? lineVerdict(verdict, kind, line),
      treatEverything: line.treatEverything,
    };
  };
}

/** The higher of the route's top and the source's own height; unknown as long as the route's is. */
function higher(altitudeM: number | null, tags: Tags): number | null {
  const own = Number.parseFloat(tags.ele ?? '');
  return altitudeM === null || Number.isNaN(own) ? altitudeM : Math.max(altitudeM, own);
}

function fillingTime({ tankL, ropeAndBucket }: TreatingFacts, { latest }: Noted): FillingTime | null {
  const filling = latest === null ? null : timeToFill(tankL, latest, ropeAndBucket);
  return filling === null ? null : { phrase: 'filled-in', facts: { litres: tankL, ...filling } };
}

const MINUTES_PER_DAY = 1440;

/** Of a line that treats less in a day than is drunk no water lives; null of any other, and where its flow is not known. */
function slowLine(flowLPerMin: number | null, drunkLPerDay: number): LineVerdict | null {
  if (flowLPerMin === null || flowLPerMin * MINUTES_PER_DAY >= drunkLPerDay) return null;
  const givesLPerDay = flowLPerMin * MINUTES_PER_DAY;
  return { fit: false, lacks: [{ phrase: 'treats-too-little', facts: { givesLPerDay, drunkLPerDay } }] };
}

function lineVerdict(
  { ok, logs, lacks, remarks }: SourceVerdict,
  kind: SourceKind,
  line: Treatment,
): LineVerdict {
  if (!ok) return { fit: false, lacks };
  return { fit: true, as: { phrase: 'taken-as', facts: { kind, logs, at: line.at } }, remarks };
}
