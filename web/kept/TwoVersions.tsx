import type { KeptTripReply } from '../../server/contract/kept.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import type { Keeper } from './keeper.ts';
import { whenWords } from './when-words.ts';

/** The trip was changed elsewhere while something here was not saved: both versions are offered, and both stay among the changes. */
export const TwoVersions = ({ kept, keeper }: { kept: KeptTripReply; keeper: Keeper }) => (
  <div className="two-versions" role="alert">
    <p>{tx`${<b>{t('This trip was changed elsewhere')}</b>} (${whenWords(kept.changedAt, new Date())}), and what you changed here is not saved yet. Both versions stay on the list of changes, whichever you go on with.`}</p>
    <button type="button" className="main" onClick={() => void keeper.keepMine()}>
      {t('Go on with what is here')}
    </button>
    <button type="button" onClick={() => void keeper.takeKept()}>
      {t('Go on with the other')}
    </button>
  </div>
);
