import { Dialog } from '../kit/Dialog.tsx';
import { t } from '../language/t.ts';
import type { Keeper, KeeperState } from './keeper.ts';
import { whenWords } from './when-words.ts';

interface ChangesDialogProps {
  keeper: Keeper;
  kept: KeeperState;
  onClose: () => void;
}

/** All changes of the trip, the newest first, each to be gone back to: nothing that was said is lost by that. */
export function ChangesDialog({ keeper, kept: { changes, trip }, onClose }: ChangesDialogProps) {
  return (
    <Dialog title={t('Changes of this trip')} mayClose onClose={onClose}>
      <p>{t('Go back to any of them: those made since stay on the list.')}</p>
      <ol className="changes">
        {changes.map(({ seq, at, change }) => {
          const isHere = seq === trip?.standsAt;
          return (
            <li key={seq} aria-current={isHere ? 'true' : undefined}>
              <span>
                {change} <small>{whenWords(at, new Date())}</small>
              </span>
              {isHere ? (
                <b>{t('Here')}</b>
              ) : (
                <button type="button" onClick={() => void keeper.stand(seq)}>
                  {t('Go here')}
                </button>
              )}
            </li>
          );
        })}
      </ol>
      <div className="dialog-actions">
        <button type="button" className="main" onClick={onClose}>
          {t('Close')}
        </button>
      </div>
    </Dialog>
  );
}
