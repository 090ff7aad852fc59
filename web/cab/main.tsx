import { createRoot } from 'react-dom/client';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import { type CabAsk, cabState } from '../../server/core/cab/cab-state.ts';
import { unpackRuns } from '../../server/core/cab/packed-runs.ts';
import { hearLanguage, type Language } from '../../server/words/parts/language.ts';
import { hearUnits } from '../../server/words/parts/reader-units.ts';
import { CabView } from './CabView.tsx';

declare global {
  /** What the file says of states, so that its figures can be held against the server's. */
  var drystageStates: ((asks: readonly CabAsk[]) => unknown) | undefined;
}

const text = document.getElementById('cab-file')?.textContent;
if (text != null) {
  const file = JSON.parse(text) as CabFile;
  const { language, units } = file.reader;
  hearLanguage(() => language as Language);
  hearUnits(() => units);
  const runs = unpackRuns(file.basis.runs);
  globalThis.drystageStates = (asks) => asks.map((ask) => cabState(runs, ask));
  const root = document.getElementById('cab');
  if (root !== null) {
    root.replaceChildren();
    createRoot(root).render(<CabView file={file} runs={runs} />);
  }
}
