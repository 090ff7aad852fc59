import { useState } from 'react';
import type { LogResult } from '../../server/contract/answers/log.ts';
import { detailsOf, type ProblemDetails, readLog } from '../api/api.ts';
import { SelectRow } from '../form/FormRow.tsx';
import { useForm } from '../form/form-context.ts';
import { FilePick } from '../kit/FilePick.tsx';
import { Problem } from '../kit/Problem.tsx';
import { SURFACE_CHOICES } from '../words/surface-choices.ts';
import { LogFigures } from './LogFigures.tsx';
import { crewCount, withFuelLog, withWaterLog } from './take-in.ts';
import './log.css';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';

const SURFACES = [
  { value: '', words: t('any surface') },
  ...SURFACE_CHOICES.filter(({ value }) => value !== 'unknown'),
];

/** Learns fuel or water use from a log of the reader's own, and takes it into the rig. */
export function LogSection() {
  const { said, units, onEdit } = useForm();
  const [surface, setSurface] = useState('');
  const [log, setLog] = useState<File | null>(null);
  const [learned, setLearned] = useState<LogResult | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const [taken, setTaken] = useState(false);

  const read = async (file: File, onSurface: string) => {
    const people = crewCount(said.rig);
    setLog(file);
    setTaken(false);
    try {
      // The server knows by the columns which kind of log it is, and refuses what is not of that kind.
      const first = await readLog(file, onSurface === '' ? {} : { surface: onSurface });
      const result =
        first.kind === 'water' && people !== null ? await readLog(file, { people: String(people) }) : first;
      setLearned(result);
      setProblem(null);
    } catch (error) {
      setLearned(null);
      setProblem(detailsOf(error));
    }
  };
  const take = () => {
    if (learned === null) return;
    const rig = learned.kind === 'fuel' ? withFuelLog(said.rig, learned) : withWaterLog(said.rig, learned);
    onEdit({ ...said, rig });
    setTaken(true);
  };
  return (
    <div className="log">
      <p>{tx`A CSV with a header: fill-ups as ${<code>odometer_km, litres, full</code>}, or water as ${<code>date, litres, people, days</code>}. Units stand in the header; a surface or a mass may stand beside.`}</p>
      <FilePick
        accept=".csv,.txt,text/csv"
        onFiles={([file]) => file !== undefined && void read(file, surface)}
      >
        {log === null ? t('Open a log') : t('Open another log')}
      </FilePick>
      {(learned?.kind === 'fuel' || surface !== '') && (
        <SelectRow
          label={t('Only what was driven on')}
          value={surface}
          choices={SURFACES}
          onChoose={(chosen) => {
            setSurface(chosen);
            if (log !== null) void read(log, chosen);
          }}
        />
      )}
      {problem !== null && <Problem problem={problem} />}
      {learned !== null && (
        <>
          <LogFigures learned={learned} units={units} />
          <p className="actions">
            <button type="button" className="main" onClick={take} disabled={taken}>
              {t('Take it into the rig')}
            </button>{' '}
            <span role="status">{taken ? t('Taken: the answer above is reckoned with it.') : ''}</span>
          </p>
        </>
      )}
    </div>
  );
}
