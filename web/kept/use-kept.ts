import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Said } from '../state/said.ts';
import { changeWords } from './change-words.ts';
import { Keeper, type KeeperState } from './keeper.ts';

interface KeptPage {
  readonly analysis: Analysis | null;
  readonly onSaid: (said: Said) => void;
  readonly onOwn: (id: string) => void;
}

/** What keeps the trip that is open, and how that stands. */
export function useKept({ analysis, onSaid, onOwn }: KeptPage): { keeper: Keeper; kept: KeeperState } {
  const [keeper] = useState(() => new Keeper());
  const kept = useSyncExternalStore(keeper.subscribe, keeper.read);
  useEffect(() => {
    const nameOf = (id: string): string =>
      analysis?.passings.find((passing) => passing.id === id)?.name ?? id;
    keeper.page = { onSaid, wordsOf: (before, after) => changeWords(before, after, nameOf), onOwn };
  }, [keeper, analysis, onSaid, onOwn]);
  useEffect(() => {
    const look = () => {
      if (document.visibilityState !== 'visible') return;
      keeper.again();
      void keeper.refresh();
    };
    const events = ['online', 'focus'] as const;
    for (const event of events) window.addEventListener(event, look);
    document.addEventListener('visibilitychange', look);
    return () => {
      for (const event of events) window.removeEventListener(event, look);
      document.removeEventListener('visibilitychange', look);
    };
  }, [keeper]);
  return { keeper, kept };
}
