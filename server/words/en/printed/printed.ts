import { CHECK_WORDS } from './check.ts';
import { COMPARISON_WORDS } from './comparison.ts';
import { CREW_WORDS } from './crew.ts';
import { DAYS_WORDS } from './days.ts';
import { EXPORT_WORDS } from './export.ts';
import { EXTRACT_WORDS } from './extracts.ts';
import { FUEL_WORDS } from './fuel.ts';
import { GAP_TABLE_WORDS } from './gap-table.ts';
import { LEARNT_WORDS } from './learnt.ts';
import { MASS_WORDS } from './mass.ts';
import { PAPER_WORDS } from './paper/paper.ts';
import { GAUGE_WORDS } from './plan/gauge.ts';
import { PLAN_WORDS } from './plan/plan.ts';
import { SHEET_WORDS } from './plan/sheet.ts';
import { WHAT_IF_WORDS } from './plan/what-if.ts';
import { PROGRESS_WORDS } from './progress.ts';
import { REPORT_WORDS } from './report.ts';
import { LINE_WORDS } from './shared/lines.ts';
import { TREATMENT_WORDS } from './treatment.ts';

/** What the command line prints around what is said, in English: heads of tables, labels, sentences of figures. */
export const ENGLISH_PRINTED = {
  lines: LINE_WORDS,
  progress: PROGRESS_WORDS,
  extracts: EXTRACT_WORDS,
  report: REPORT_WORDS,
  gapTable: GAP_TABLE_WORDS,
  fuel: FUEL_WORDS,
  crew: CREW_WORDS,
  treatment: TREATMENT_WORDS,
  days: DAYS_WORDS,
  mass: MASS_WORDS,
  comparison: COMPARISON_WORDS,
  learnt: LEARNT_WORDS,
  check: CHECK_WORDS,
  plan: PLAN_WORDS,
  sheet: SHEET_WORDS,
  gauge: GAUGE_WORDS,
  whatIf: WHAT_IF_WORDS,
  export: EXPORT_WORDS,
  paper: PAPER_WORDS,
};

/** The words of every report that the command line prints: what another language has to have. */
export type PrintedWords = typeof ENGLISH_PRINTED;
