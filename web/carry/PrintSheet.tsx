import { useEffect, useRef, useState } from 'react';
import { detailsOf, type ProblemDetails, sheetPage, wasCalledOff } from '../api/api.ts';
import { useForm } from '../form/form-context.ts';
import { Problem } from '../kit/Problem.tsx';
import { printPage } from '../kit/print-page.ts';
import { t } from '../language/t.ts';
import { volumeUnitInFull } from '../units/units.ts';

type State =
  | { readonly is: 'still' }
  | { readonly is: 'making' }
  | { readonly is: 'refused'; readonly problem: ProblemDetails };

/** A button that has the sheet made, of what the answer on the screen is of, and hands it to the printer. */
export function PrintSheet({ id }: { id: string }) {
  const { analysis, units } = useForm();
  const [state, setState] = useState<State>({ is: 'still' });
  const work = useRef<AbortController | null>(null);
  useEffect(() => () => work.current?.abort(), []);
  const print = async () => {
    work.current?.abort();
    const mine = new AbortController();
    work.current = mine;
    setState({ is: 'making' });
    try {
      const paper = volumeUnitInFull(units) === 'US gal' ? 'letter' : 'a4';
      printPage(await sheetPage(id, analysis, { paper, units, signal: mine.signal }));
      setState({ is: 'still' });
    } catch (error) {
      if (!wasCalledOff(error)) setState({ is: 'refused', problem: detailsOf(error) });
    }
  };
  return (
    <div className="print-sheet">
      <button type="button" disabled={state.is === 'making'} onClick={print}>
        {t('Print the sheet')}
      </button>{' '}
      <span role="status" className="soft">
        {state.is === 'making' && t('Making the sheet…')}
      </span>
      {state.is === 'refused' && <Problem problem={state.problem} />}
    </div>
  );
}
