import { useEffect, useState, useSyncExternalStore } from 'react';
import { Problem } from '../kit/Problem.tsx';
import { ChangesDialog } from './ChangesDialog.tsx';
import type { Keeper, KeeperState, Saving } from './keeper.ts';
import './kept.css';
import { inSentence } from '../language/codes.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface KeepRowProps {
  keeper: Keeper;
  kept: KeeperState;
  onTrips: () => void;
  onMaps: () => void;
}

/** Whether all is kept, undo and redo, the list of changes and the other trips. */
export function KeepRow({ keeper, kept, onTrips, onMaps }: KeepRowProps) {
  const [listed, setListed] = useState(false);
  useUndoKeys(keeper);
  const { saving } = kept;
  return (
    <div className="keep-row">
      <button type="button" onClick={onTrips}>
        {t('Trips')}
      </button>
      <UndoRedo keeper={keeper} kept={kept} />
      <button type="button" disabled={kept.changes.length < 2} onClick={() => setListed(true)}>
        {t('Changes')}
      </button>
      <MapsButton keeper={keeper} onMaps={onMaps} />
      <span
        className="saving"
        role={isTrouble(saving) ? 'status' : undefined}
        data-saving={saving.state}
        data-fleeting={isFleeting(saving)}
      >
        {savingWords(saving, kept.trip?.name ?? '')}
      </span>
      {saving.state === 'waiting' && (
        <button type="button" onClick={keeper.again}>
          {t('Try now')}
        </button>
      )}
      {saving.state === 'refused' && <Problem problem={saving.problem} before={t('Not saved.')} />}
      {listed && <ChangesDialog {...{ keeper, kept }} onClose={() => setListed(false)} />}
    </div>
  );
}

/** Opens the list of maps; tells that one is on its way, and whether it came to nothing. */
function MapsButton({ keeper: { maps }, onMaps }: Pick<KeepRowProps, 'keeper' | 'onMaps'>) {
  const { job, problem } = useSyncExternalStore(maps.subscribe, maps.read);
  return (
    <button
      type="button"
      onClick={onMaps}
    >{tx`Maps${job !== null && t(' (more on the way)')}${job === null && problem !== null && t(' (not added)')}`}</button>
  );
}

function UndoRedo({ keeper, kept }: Pick<KeepRowProps, 'keeper' | 'kept'>) {
  const here = kept.changes.find(({ seq }) => seq === kept.trip?.standsAt);
  // What is being saved can be taken back as well: that waits for the save.
  const isSaving = kept.saving.state === 'saving';
  const ways = [
    { word: t('Undo'), may: isSaving || keeper.undoTo() !== null, change: here?.change, go: keeper.undo },
    { word: t('Redo'), may: keeper.redoTo() !== null, change: keeper.redoTo()?.change, go: keeper.redo },
  ];
  return ways.map(({ word, may, change, go }) => (
    <button
      key={word}
      type="button"
      disabled={!may}
      title={
        may
          ? `${word}: ${isSaving ? t('the last change') : (change ?? '')}`
          : t`Nothing to ${inSentence(word)}`
      }
      onClick={() => void go()}
    >
      {word}
    </button>
  ));
}

/** Told to people who do not see the page; that all is saved is no news. */
const isTrouble = (saving: Saving): boolean =>
  ['waiting', 'elsewhere', 'refused'].includes(saving.state) || isFleeting(saving);

const isFleeting = (saving: Saving): boolean => saving.state === 'saved' && !saving.isLasting;

function savingWords(saving: Saving, name: string): string {
  switch (saving.state) {
    case 'own':
      return t('The demo: a change makes your own trip');
    case 'saved':
      return saving.isLasting
        ? t`Saved as “${name}”`
        : t`“${name}” is held only until Drystage stops: nothing can be kept now (why: see Trips)`;
    case 'saving':
      return t('Saving…');
    case 'waiting':
      return saving.inBrowser
        ? t('Drystage does not answer. Your changes are kept in this browser and saved as soon as it does.')
        : t('Drystage does not answer, and this browser keeps nothing: leave the page open until it does.');
    case 'elsewhere':
      return t('Changed in two places');
    case 'refused':
      return t('Not saved');
  }
}

/** What a key asks for; null where it is not for this, or a field has undoing of its own. */
function wishOf({ target, key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): 'undo' | 'redo' | null {
  if (target instanceof HTMLElement && target.closest('input, textarea, select, dialog') !== null)
    return null;
  if (altKey || !(ctrlKey || metaKey)) return null;
  if (key.toLowerCase() === 'y') return 'redo';
  if (key.toLowerCase() !== 'z') return null;
  return shiftKey ? 'redo' : 'undo';
}

/** Undo and redo by the usual keys. */
function useUndoKeys(keeper: Keeper): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const wish = wishOf(event);
      if (wish === null) return;
      event.preventDefault();
      void (wish === 'redo' ? keeper.redo() : keeper.undo());
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [keeper]);
}
