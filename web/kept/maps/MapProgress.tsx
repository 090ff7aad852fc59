import { useId } from 'react';
import { UploadProgress } from '../../open/UploadProgress.tsx';
import type { MapWorkState } from '../map-work.ts';
import { readingWords } from './reading-words.ts';

/** How the map data that is on its way goes on. */
export function MapProgress({ job, readings }: Pick<MapWorkState, 'job' | 'readings'>) {
  if (readings.length === 0) return job === null ? null : <UploadProgress stage={job.stage} />;
  return (
    <ul className="maps">
      {readings.map((reading) => (
        <ReadingRow key={reading.id} name={reading.name} {...readingWords(reading, new Date())} />
      ))}
    </ul>
  );
}

function ReadingRow({ name, words, share }: { name: string; words: string; share: number | null }) {
  const id = useId();
  return (
    <li className="progress">
      <label htmlFor={id}>{name}</label> <span>{words}</span>
      <progress id={id} max={1} {...(share !== null && { value: share })} />
    </li>
  );
}
