import { useState } from 'react';
import { detailsOf, type ProblemDetails, type TakeAlongFormat, takeAlong } from '../api/api.ts';
import { useForm } from '../form/form-context.ts';
import { Problem } from '../kit/Problem.tsx';
import { fileName, saveBlob } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import { PrintSheet } from './PrintSheet.tsx';

/** What each file is, on its button. */
const FILES: readonly { readonly format: TakeAlongFormat; readonly words: string }[] = [
  { format: 'html', words: t('For a telephone') },
  { format: 'pdf', words: t('Sheet as PDF') },
  { format: 'gpx', words: 'GPX' },
  { format: 'geojson', words: 'GeoJSON' },
  { format: 'csv', words: 'CSV' },
  { format: 'ics', words: t('Calendar') },
];

/** The plan as files to take along; the one for a telephone has the view from the seat. */
export function TakeAlong({ id }: { id: string }) {
  const { analysis, units } = useForm();
  const [working, setWorking] = useState<TakeAlongFormat | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const save = async (format: TakeAlongFormat) => {
    setWorking(format);
    setProblem(null);
    try {
      const file = await takeAlong(id, format, { ...analysis, units });
      saveBlob(`${fileName(analysis.route.name)}.${format}`, file);
    } catch (error) {
      setProblem(detailsOf(error));
    } finally {
      setWorking(null);
    }
  };
  return (
    <section aria-labelledby="take-along">
      <h3 id="take-along">{t('Take along')}</h3>
      <PrintSheet id={id} />
      <p>
        {t(
          'The file for a telephone works offline: it says, from where you are and what is aboard, whether to go on or back.',
        )}
      </p>
      <p className="actions">
        {FILES.map(({ format, words }) => (
          <button key={format} type="button" disabled={working !== null} onClick={() => void save(format)}>
            {words}
          </button>
        ))}
      </p>
      <p role="status">{working === null ? '' : t('Making the file…')}</p>
      {problem !== null && <Problem problem={problem} before={t('There is no file.')} />}
    </section>
  );
}
