import type { Commodity } from '../../../contract/common.ts';
import type { MassLimit } from '../question/mass-room.ts';
import type { Failures } from './open-places.ts';
import type { SideTable } from './side-table.ts';

/** What both commodities are searched with. */
export interface SearchFacts {
  readonly tables: Readonly<Record<Commodity, SideTable>>;
  /** Null where no stop has to be able to fail. */
  readonly failures: Failures | null;
  readonly limits: readonly MassLimit[];
}
