import type { KeptTripReply } from '../../server/contract/kept.ts';
import type { Keeper } from './keeper.ts';
import { whenWords } from './when-words.ts';

/** The trip was changed elsewhere while something here was not saved: both versions are offered, and both stay among the changes. */
export const TwoVersions = ({ kept, keeper }: { kept: KeptTripReply; keeper: Keeper }) => (
  <div className="two-versions" role="alert">
    <p>
      <b>This trip was changed elsewhere</b> ({whenWords(kept.changedAt, new Date())}), and what you changed
      here is not saved yet. Both versions stay on the list of changes, whichever you go on with.
    </p>
    <button type="button" className="main" onClick={() => void keeper.keepMine()}>
      Go on with what is here
    </button>
    <button type="button" onClick={() => void keeper.takeKept()}>
      Go on with the other
    </button>
  </div>
);
