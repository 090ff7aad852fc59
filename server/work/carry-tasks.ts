import { packOf } from '../app/export/pack.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import { type PlanAndMore, type PlannedTrip, planTrip } from '../app/plan-trip.ts';
import { sheetHtml } from '../app/sheet/html/sheet-html.ts';
import { sheetOf } from '../app/sheet/sheet-of.ts';
import { EXPORT_FILES, type ExportEnding, isForReaders } from '../app/take-along/export-file.ts';
import type { Paper } from '../contract/answers/sheet.ts';
import type { Units } from '../contract/answers/units.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import { InputProblem, type Outcome } from '../core/input/problem.ts';
import type { MipSolver } from '../core/plan/model/mip.ts';
import { cabProgram } from '../io/cab-program.ts';
import { openingHours } from '../io/opening-hours.ts';
import { loadPdfPrinter } from '../io/pdf/pdf-printer.ts';
import { processorClock } from '../io/processor-clock.ts';
import { loadSolver } from '../io/solver.ts';
import { UNIT_PRESETS } from '../words/parts/reader-units.ts';
import { unpackTrip } from './pack.ts';
import type { Tell } from './protocol.ts';

import { measuring } from './speaking.ts';

export { speaking } from './speaking.ts';

export interface CarryAsk {
  /** Names the packed trip: one key, one content. */
  key: string;
  packed: SharedArrayBuffer;
  rig: RigFile;
  trip: TripFile;
  today: string;
  seconds: number;
  /** Whether ways out and the plan against one failure are wanted as well. */
  extras: boolean;
  /** Whether what the cab view is reckoned from is wanted; no, where left out. */
  cab?: boolean | undefined;
  /** Whether a good plan is to be told while the best takes longer than a moment. */
  soFar?: boolean;
}

/** Files to take along, and the sheet as a page to print. */
export type FileFormat = ExportEnding | 'sheet';

/** A plan to be had as a file. */
export interface ExportAsk extends CarryAsk {
  format: FileFormat;
  /** Of a sheet. */
  paper: Paper;
  /** Of paper and of the view from the seat. */
  units: Units;
}

let solver: ReturnType<typeof loadSolver> | null = null;
/** The trip planned last, unpacked. */
let unpacked: { key: string; loaded: LoadedTrip } | null = null;

/** Planning, which blocks its thread while the solver is at it; given up between two steps. */
export const tasks = {
  async plan(
    { key, packed, rig, trip, soFar = false, ...options }: CarryAsk,
    _signal: AbortSignal,
    givenUp: () => boolean,
    tell: Tell,
  ): Promise<Outcome<PlannedTrip>> {
    solver ??= loadSolver().catch((error: unknown) => {
      solver = null;
      throw error;
    });
    const solve = await solver;
    if (unpacked?.key !== key) unpacked = { key, loaded: unpackTrip(packed) };
    const stopWhereGivenUp = () => {
      if (givenUp()) throw new Error('the plan was given up');
    };
    const stoppable: MipSolver = (...model) => {
      stopWhereGivenUp();
      return solve(...model);
    };
    const processor = processorClock();
    const clock = () => {
      stopWhereGivenUp();
      return processor();
    };
    const onSoFar = soFar ? (planned: PlanAndMore) => tell(replyBytes(planned)) : undefined;
    const asked = { ...options, openingHours, solver: stoppable, clock, onSoFar };
    return planTrip(unpacked.loaded, { rig, trip }, asked);
  },

  /** As plan; gives it as a file to take along, or as the sheet to print. */
  async exportFile(
    { format, paper, units, ...ask }: ExportAsk,
    signal: AbortSignal,
    givenUp: () => boolean,
    tell: Tell,
  ): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const planned = await tasks.plan({ ...ask, cab: format === 'html' }, signal, givenUp, tell);
    if (!planned.ok) return planned;
    if (unpacked === null) throw new Error('a plan of no trip');
    const pack = packOf(unpacked.loaded, planned.value, ask.today);
    if (!pack.ok) return pack;
    try {
      const tools = { cabProgram, pdfPrinter: loadPdfPrinter, paper };
      const content = await measuring(isForReaders(format) ? units : UNIT_PRESETS.metric, () =>
        format === 'sheet' ? sheetHtml(sheetOf(pack.value), paper) : EXPORT_FILES[format](pack.value, tools),
      );
      return {
        ok: true,
        value: typeof content === 'string' ? new TextEncoder().encode(content) : new Uint8Array(content),
      };
    } catch (error) {
      if (error instanceof InputProblem) return { ok: false, problem: error.problem };
      throw error;
    }
  },

  /** As plan; gives a PlanReply as JSON text in UTF-8, and tells such. */
  async planReply(
    ask: CarryAsk,
    signal: AbortSignal,
    givenUp: () => boolean,
    tell: Tell,
  ): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const outcome = await tasks.plan(ask, signal, givenUp, tell);
    return outcome.ok ? { ok: true, value: replyBytes(outcome.value) } : outcome;
  },
};

const replyBytes = ({ plan, whatIf, gauge }: PlanAndMore): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(JSON.stringify({ plan, whatIf, gauge }));
