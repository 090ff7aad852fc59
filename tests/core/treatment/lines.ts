import { toContract } from '../../../server/app/to-contract.ts';
import type { TreatmentFile, TreatmentReport } from '../../../server/contract/treatment.ts';
import { settleTreatment } from '../../../server/core/treatment/line/settle-treatment.ts';
import type { Conditions } from '../../../server/core/treatment/line/stage-effect.ts';
import type { Treatment } from '../../../server/core/treatment/line/treatment.ts';
import type { Journey } from '../../../server/core/treatment/source/journey.ts';
import { treatmentReport } from '../../../server/core/treatment/source/treatment-report.ts';
import { textOf, type Utterance } from '../../../server/words/words-of.ts';

type StageFile = TreatmentFile['stages'][number];

export const ULTRAFILTER: StageFile = { kind: 'ultrafilter', poreMicron: 0.01 };
/** A lamp whose maker states the log reductions of the strictest target. */
export const LAMP: StageFile = {
  kind: 'uv',
  doseMJPerCm2: 40,
  logs: { bacteria: 6, viruses: 4, protozoa: 3 },
};

export const lineOf = (stages: StageFile[], rest: Omit<TreatmentFile, 'stages'> = {}): Treatment =>
  settleTreatment({ stages, ...rest }, () => {}).treatment;

/** Clear, neutral, warm water at sea level. */
export const EASY: Conditions = {
  turbidityNtu: 0.5,
  ph: 7,
  temperatureC: 20,
  altitudeM: 0,
  flowLPerMin: null,
};

export const WEEK: Journey = { litresPerDay: 10, days: 7, altitudeM: 0, coldestNightC: null };

/** What a line does on a trip, as answers have it. */
export const reportOn = (
  stages: StageFile[],
  rest: Omit<TreatmentFile, 'stages'> = {},
  journey: Journey = WEEK,
): TreatmentReport => toContract(treatmentReport(lineOf(stages, rest), journey));

/** What core says, in words. */
export const textsOf = (all: readonly Utterance[]): string[] => all.map((said) => textOf(said));

export const codesOf = (report: TreatmentReport): string[] => report.cautions.map(({ code }) => code);
