import { type FormEvent, useCallback, useEffect, useState } from 'react';
import type { KeptRig } from '../../server/contract/kept.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { detailsOf, type ProblemDetails, wasCalledOff } from '../api/api.ts';
import { getRigs, putRig, removeRig } from '../api/rigs.ts';
import { Problem } from '../kit/Problem.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

interface KeptRigsProps {
  rig: RigFile;
  /** A kept rig is to be this trip's. */
  onTake: (rig: RigFile) => void;
}

/** Rigs that are kept by name for other trips: this one kept, another taken, one that is not wanted any more removed. */
export function KeptRigs({ rig, onTake }: KeptRigsProps) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className="kept-rigs" onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary>{t('Rigs kept for other trips')}</summary>
      {isOpen && <RigList {...{ rig, onTake }} />}
    </details>
  );
}

function RigList({ rig, onTake }: KeptRigsProps) {
  const { rigs, problem, run } = useRigs();
  const [name, setName] = useState(rig.name ?? '');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() !== '') void run(() => putRig(name.trim(), rig));
  };
  const isTaken = rigs?.some((kept) => kept.name === name.trim()) === true;
  return (
    <>
      {problem !== null && <Problem problem={problem} />}
      <form className="rig-name" onSubmit={submit}>
        <label>
          {t('Keep this rig as')}{' '}
          <input value={name} maxLength={120} onChange={({ target }) => setName(target.value)} />
        </label>{' '}
        <button type="submit">{isTaken ? t('Keep in place of that one') : t('Keep')}</button>
      </form>
      {rigs?.length === 0 && <p>{t('None is kept yet.')}</p>}
      <ul className="rig-list" aria-label={t('Kept rigs')}>
        {rigs?.map((kept) => (
          <li key={kept.name}>
            <span>{kept.name}</span>
            <button
              type="button"
              onClick={() => onTake(kept.rig)}
            >{tx`Take${<span className="only-read"> {kept.name}</span>}`}</button>
            <button
              type="button"
              onClick={() => void run(() => removeRig(kept.name))}
            >{tx`Remove${<span className="only-read"> {kept.name}</span>}`}</button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The rigs that are kept, fetched anew after each thing done to one of them. */
function useRigs() {
  const [rigs, setRigs] = useState<readonly KeptRig[] | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const fetchThem = useCallback(async (signal: AbortSignal) => {
    try {
      setRigs((await getRigs(signal)).rigs);
    } catch (error) {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    }
  }, []);
  useEffect(() => {
    const control = new AbortController();
    void fetchThem(control.signal);
    return () => control.abort();
  }, [fetchThem]);
  const run = async (work: () => Promise<unknown>): Promise<void> => {
    setProblem(null);
    try {
      await work();
      await fetchThem(new AbortController().signal);
    } catch (error) {
      setProblem(detailsOf(error));
    }
  };
  return { rigs, problem, run };
}
