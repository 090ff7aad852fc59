import { useState } from 'react';
import type { NotesFormat } from '../../server/contract/answers/field-notes.ts';
import { ApiProblem, exportNotes, importNotes, type ProblemDetails } from '../api/api.ts';
import { useForm } from '../form/form-context.ts';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { fileName, saveFile } from '../kit/save-file.ts';
import { plural, t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

const FORMATS: readonly { format: NotesFormat; words: string; type: string }[] = [
  { format: 'gpx', words: 'GPX', type: 'application/gpx+xml' },
  { format: 'geojson', words: 'GeoJSON', type: 'application/geo+json' },
  { format: 'csv', words: 'CSV', type: 'text/csv' },
];

/** Notes out of this trip as a file, and into it from one. */
export function NotesFiles() {
  const { said, analysis, onEdit } = useForm();
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const [outcome, setOutcome] = useState<string | null>(null);
  const attempt = async (action: () => Promise<void>) => {
    setProblem(null);
    setOutcome(null);
    try {
      await action();
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.details);
    }
  };
  const save = ({ format, type }: (typeof FORMATS)[number]) =>
    attempt(async () => {
      const text = await exportNotes(said.trip, format);
      saveFile(`${fileName(analysis.route.name)}-notes.${format}`, type, text);
    });
  const open = (files: readonly File[]) =>
    attempt(async () => {
      const [file] = files;
      if (file === undefined) return;
      const { trip, added, replaced, others } = await importNotes(said.trip, file);
      setOutcome(outcomeWords(added, replaced, others));
      if (added + replaced > 0) onEdit({ ...said, trip });
    });
  return (
    <section aria-labelledby="notes-files">
      <h3 id="notes-files">{t('Your notes as a file')}</h3>
      <p className="actions">
        {FORMATS.map((one) => (
          <button
            key={one.format}
            type="button"
            onClick={() => void save(one)}
          >{tx`Save as ${one.words}`}</button>
        ))}
        <FilePick accept=".gpx,.geojson,.json,.csv" onFiles={(files) => void open(files)}>
          {t('Open a file of notes')}
        </FilePick>
      </p>
      <p role="status">{outcome}</p>
      {problem !== null && <Problem problem={problem} />}
    </section>
  );
}

function outcomeWords(added: number, replaced: number, others: number): string {
  const left =
    others === 0
      ? ''
      : t` ${others} ${plural(others, t('object says'), t('objects say'))} nothing that could be noted.`;
  const more = replaced === 0 ? '' : t`, ${replaced} in place of others`;
  return t`${added} ${plural(added, t('note'), t('notes'))} added${more}.${left}`;
}
