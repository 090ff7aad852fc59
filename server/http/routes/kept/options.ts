import type { Interpreter } from '../../../io/overpass/ask.ts';
import type { Store } from '../../../store/library/store.ts';
import type { AnalysisService } from '../../service/analysis-service.ts';
import type { ExtractKeeper } from '../../service/extract-keeper.ts';
import type { Limits } from '../../service/limits.ts';

/** What the routes of kept trips work with. Ids of kept trips are ids for /api/analyses/{id} too, and always answered there. */
export interface TripRoutesOptions {
  store: Store;
  service: AnalysisService;
  limits: Limits;
  /** Whether one signs in. */
  isShared: boolean;
}

/** What the routes of extracts work with besides. */
export interface ExtractRoutesOptions extends TripRoutesOptions {
  keeper: ExtractKeeper;
  interpreter: Interpreter;
}
