import type { Report } from './findings.ts';
import { toldIn } from './form-values.ts';
import { SaidFields } from './SaidFields.tsx';
import './notes.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

/** Whether a supply works: by one click as seen today, or with who said it, how they are asked again, until when it holds. */
export const ReportForm = ({ onReport }: { onReport: (report: Report) => void }) => (
  <form
    className="note-form"
    onSubmit={(event) => {
      event.preventDefault();
      const form = new FormData(event.currentTarget);
      const { submitter } = event.nativeEvent as SubmitEvent;
      const works = submitter?.getAttribute('value') !== 'fails';
      onReport({ works, ...toldIn(form, 'by', 'phone', 'words', 'from', 'until') });
      event.currentTarget.reset();
    }}
  >
    <p className="actions">{tx`Asked or been there today? ${(
      <button type="submit" value="works">
        {t('It works')}
      </button>
    )}${(
      <button type="submit" value="fails">
        {t('It does not')}
      </button>
    )}`}</p>
    <details>
      <summary>{t('Who said it, and until when it holds')}</summary>
      <SaidFields withDays />
    </details>
  </form>
);
