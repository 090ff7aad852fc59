import type { FuelLog, WaterLog } from '../../contract/answers/log.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { LogOmission } from '../phrases/log.ts';
import type { Phrase } from '../phrases/phrases.ts';

/** What is said in the contract's words and is codes here; `source` and `yaml` are for the edge. */
type InWords = 'source' | 'yaml' | 'method' | 'cautions' | 'leftOut';

interface Said {
  /** How the figures were come by. */
  method: Phrase[];
  cautions: Caution[];
}

/** What a log of fill-ups teaches. Distances are readings of an odometer, in km. */
export type FuelLesson = Omit<FuelLog, InWords> & Said & { leftOut: LogOmission[] };
/** What a water log teaches. */
export type WaterLesson = Omit<WaterLog, InWords> & Said;
export type LogLesson = FuelLesson | WaterLesson;
