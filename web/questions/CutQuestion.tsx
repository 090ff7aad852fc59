import type { Analysis } from '../../server/contract/analysis.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { toldExtract } from './told-extract.ts';

interface CutQuestionProps {
  analysis: Analysis;
  onAnswer: (change: Pick<TripFile, 'extracts'>) => void;
}

/** Asks whether a map that looks cut off is whole; one file at a time. Only a yes changes anything. */
export function CutQuestion({ analysis, onAnswer }: CutQuestionProps) {
  const cut = analysis.extracts.find(({ maybeCut }) => maybeCut === true);
  if (cut === undefined) return null;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onAnswer({ extracts: toldExtract(analysis.trip.extracts ?? [], cut.source, { whole: true }) });
      }}
    >
      <h2>{tx`Is the map ${cut.source} whole?`}</h2>
      <p className="question-why">
        {t(
          'It looks like a download that stopped. Compare its size with the one where it came from. Until you say that it is whole, what it does not show counts as not known.',
        )}
      </p>
      <div className="inputs">
        <button type="submit">{t('It is whole')}</button>
      </div>
    </form>
  );
}
