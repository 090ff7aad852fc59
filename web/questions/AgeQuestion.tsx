import { type FormEvent, useId } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { today } from '../words/local-time.ts';
import { toldExtract } from './told-extract.ts';

interface AgeQuestionProps {
  analysis: Analysis;
  onAnswer: (change: Pick<TripFile, 'extracts'>) => void;
}

/** Asks of which day a map is that does not say so itself; one file at a time. */
export function AgeQuestion({ analysis, onAnswer }: AgeQuestionProps) {
  const id = useId();
  const undated = analysis.extracts.find(({ asOf }) => asOf === null);
  if (undated === undefined) return null;
  const answer = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const asOf = String(new FormData(event.currentTarget).get('asOf') ?? '');
    if (asOf === '') return;
    onAnswer({ extracts: toldExtract(analysis.trip.extracts ?? [], undated.source, { asOf }) });
  };
  return (
    <form onSubmit={answer}>
      <h2>{tx`Of which day is the map ${undated.source}?`}</h2>
      <p className="question-why">
        {t('It does not say. Until you do, what it shows without a date of its own counts for less.')}
      </p>
      <div className="inputs">
        <span>
          <label htmlFor={id}>{t('Made or downloaded on')}</label>{' '}
          <input key={undated.source} id={id} name="asOf" type="date" required max={today()} />
        </span>
        <button type="submit">{t('Use this')}</button>
      </div>
    </form>
  );
}
