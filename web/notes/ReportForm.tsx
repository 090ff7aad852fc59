import type { Report } from './findings.ts';
import { toldIn } from './form-values.ts';
import { SaidFields } from './SaidFields.tsx';
import './notes.css';

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
    <p className="actions">
      Asked or been there today?{' '}
      <button type="submit" value="works">
        It works
      </button>
      <button type="submit" value="fails">
        It does not
      </button>
    </p>
    <details>
      <summary>Who said it, and until when it holds</summary>
      <SaidFields withDays />
    </details>
  </form>
);
