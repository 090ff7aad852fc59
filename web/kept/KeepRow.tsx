import { useEffect, useState } from 'react';
import { Problem } from '../kit/Problem.tsx';
import { ChangesDialog } from './ChangesDialog.tsx';
import type { Keeper, KeeperState, Saving } from './keeper.ts';
import './kept.css';

interface KeepRowProps {
  keeper: Keeper;
  kept: KeeperState;
  onTrips: () => void;
}

/** Whether all is kept, undo and redo, the list of changes and the other trips. */
export function KeepRow({ keeper, kept, onTrips }: KeepRowProps) {
  const [listed, setListed] = useState(false);
  const undo = keeper.undoTo();
  const redo = keeper.redoTo();
  const here = kept.changes.find(({ seq }) => seq === kept.trip?.standsAt);
  useUndoKeys(keeper);
  const { saving } = kept;
  return (
    <div className="keep-row">
      <button type="button" onClick={onTrips}>
        Trips
      </button>
      <button
        type="button"
        disabled={undo === null}
        title={undo === null ? 'Nothing to undo' : `Undo: ${here?.change ?? ''}`}
        onClick={() => undo !== null && void keeper.stand(undo.seq)}
      >
        Undo
      </button>
      <button
        type="button"
        disabled={redo === null}
        title={redo === null ? 'Nothing to redo' : `Redo: ${redo.change}`}
        onClick={() => redo !== null && void keeper.stand(redo.seq)}
      >
        Redo
      </button>
      <button type="button" disabled={kept.changes.length < 2} onClick={() => setListed(true)}>
        Changes
      </button>
      <span className="saving" role={isTrouble(saving) ? 'status' : undefined} data-saving={saving.state}>
        {savingWords(saving, kept.trip?.name ?? '')}
      </span>
      {saving.state === 'waiting' && (
        <button type="button" onClick={keeper.again}>
          Try now
        </button>
      )}
      {saving.state === 'refused' && <Problem problem={saving.problem} before="Not saved." />}
      {listed && <ChangesDialog {...{ keeper, kept }} onClose={() => setListed(false)} />}
    </div>
  );
}

/** Told to people who do not see the page; that all is saved is no news. */
const isTrouble = ({ state }: Saving): boolean =>
  state === 'waiting' || state === 'elsewhere' || state === 'refused';

function savingWords(saving: Saving, name: string): string {
  switch (saving.state) {
    case 'own':
      return 'The demo: what you change becomes a trip of yours';
    case 'saved':
      return `Saved as “${name}”`;
    case 'saving':
      return 'Saving…';
    case 'waiting':
      return saving.inBrowser
        ? 'Drystage does not answer. Your changes are kept in this browser and saved as soon as it does.'
        : 'Drystage does not answer, and this browser keeps nothing: leave the page open until it does.';
    case 'elsewhere':
      return 'Changed in two places';
    case 'refused':
      return 'Not saved';
  }
}

/** Undo and redo by the usual keys, but not while something is typed: a field has its own. */
function useUndoKeys(keeper: Keeper): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const { target } = event;
      const isTyping =
        target instanceof HTMLElement && target.closest('input, textarea, select, dialog') !== null;
      const isUndoKey = event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey);
      const isRedoKey = event.key.toLowerCase() === 'y' && event.ctrlKey;
      if (isTyping || event.altKey || !(isUndoKey || isRedoKey)) return;
      const to = isRedoKey || event.shiftKey ? keeper.redoTo() : keeper.undoTo();
      if (to === null) return;
      event.preventDefault();
      void keeper.stand(to.seq);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [keeper]);
}
