import { t } from '../language/t.ts';
import type { Said } from '../state/said.ts';
import { withoutSure } from '../state/vouch.ts';
import type { UnitSystem } from '../units/units.ts';
import { fieldWords } from '../words/field-words.ts';

const FILES = ['rig', 'trip'] as const;

interface SureListProps {
  said: Said;
  units: UnitSystem;
  onEdit: (said: Said) => void;
}

/** The unusual figures that the reader said are meant so, each to be taken back; nothing where there is none. */
export function SureList({ said, units, onEdit }: SureListProps) {
  const sure = FILES.flatMap((file) => (said[file].sure ?? []).map((path) => ({ file, path })));
  if (sure.length === 0) return null;
  return (
    <>
      <h3>{t('Unusual figures that are meant so')}</h3>
      <ul>
        {sure.map(({ file, path }) => (
          <li key={`${file} ${path}`}>
            {fieldWords(path, units)}{' '}
            <button type="button" className="quiet" onClick={() => onEdit(withoutSure(said, file, path))}>
              {t('No longer')}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
