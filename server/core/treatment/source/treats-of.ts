import type { SourceKind, WaterNote } from '../../../contract/treatment.ts';
import type { Tags } from '../../input/sources.ts';
import type { Treats } from '../../supply/judge/treats.ts';
import { SOURCE_WORDS } from '../line/hazards.ts';
import { CLEAR_WATER } from '../line/line-effect.ts';
import { logsText } from '../line/logs.ts';
import { tapResults } from '../line/taps.ts';
import { timeToFill } from '../line/time-to-fill.ts';
import type { Treatment } from '../line/treatment.ts';
import { judgeSource, type SourceVerdict } from './judge-source.ts';
import { sourceKindOf } from './source-kind.ts';
import { drinkingFlow } from './treatment-report.ts';
import { noted } from './water-notes.ts';

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
}

const WORDS_AT = { filling: 'on filling', tap: 'at the tap' } as const;

/** The judge of waters for a rig and a trip; undefined where there is neither a line nor a note. */
export function treatsOf(facts: TreatingFacts): Treats | undefined {
  const { line, notes, altitudeM } = facts;
  if (line === null && notes.length === 0) return undefined;
  const notesById = new Map<string, WaterNote[]>();
  for (const note of notes) notesById.set(note.id, [...(notesById.get(note.id) ?? []), note]);
  const taps = line === null ? [] : tapResults(line, { ...CLEAR_WATER, altitudeM });
  const flowLPerMin = drinkingFlow(taps.map((tap) => tap.report));
  // Extracts hold many waters of few kinds: those of which nothing else is known are judged once.
  const verdicts = new Map<SourceKind, SourceVerdict>();
  return (source) => {
    const ours = source.ids.flatMap((id) => notesById.get(id) ?? []);
    const note = noted(ours, facts.on);
    const filling = note.latest === null ? null : timeToFill(facts.tankL, note.latest, facts.ropeAndBucket);
    const known = {
      salt: note.salt,
      saltOn: note.on,
      filling:
        filling === null
          ? null
          : `${shown(facts.tankL)} l in about ${Math.ceil(filling.minutes)} min at ${shown(filling.lPerMin)} l/min (${filling.how})`,
    };
    if (line === null) return { ...known, fit: null, details: [], remarks: [], treatEverything: false };
    const kind = note.latest?.source ?? sourceKindOf(source.ruleKey, source.tags);
    const top = higher(altitudeM, source.tags);
    const plain = top === altitudeM && ours.length === 0;
    const verdict =
      (plain ? verdicts.get(kind) : undefined) ??
      judgeSource(line, kind, { altitudeM: top, flowLPerMin }, note);
    if (plain) verdicts.set(kind, verdict);
    return {
      ...known,
      fit: verdict.ok,
      details: verdict.ok
        ? [`taken as ${SOURCE_WORDS[kind]}, ${logsText(verdict.logs)} log, ${WORDS_AT[line.at]}`]
        : verdict.lacks,
      remarks: verdict.remarks,
      treatEverything: line.treatEverything,
    };
  };
}

/** The higher of the route's top and the source's own height; unknown as long as the route's is. */
function higher(altitudeM: number | null, tags: Tags): number | null {
  const own = Number.parseFloat(tags.ele ?? '');
  return altitudeM === null || Number.isNaN(own) ? altitudeM : Math.max(altitudeM, own);
}

/** For texts only. */
const shown = (value: number): string => String(Math.round(value * 10) / 10);
