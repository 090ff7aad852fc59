import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { formatFigure } from '../units/units.ts';
import type { OwnFile, Role } from './guess-role.ts';

const ROLE_WORDS: Record<Role, string> = {
  route: t('the route (GPX)'),
  extract: t('map extract or waypoints'),
  rig: t('rig'),
  trip: t('trip'),
};

interface ChosenFilesProps {
  files: readonly OwnFile[];
  busy: boolean;
  onFiles: (files: OwnFile[]) => void;
}

/** The files chosen so far, each with what it is taken for. */
export function ChosenFiles({ files, busy, onFiles }: ChosenFilesProps) {
  const becomes = (key: string, role: string) =>
    onFiles(files.map((each) => (each.key === key ? { ...each, role: role as Role } : each)));
  return (
    <ul className="chosen" aria-label={t('Chosen files')}>
      {files.map(({ key, file, role }) => (
        <li key={key}>
          <span className="name">
            {file.name} <span className="soft">{sizeText(file.size)}</span>
          </span>
          <select
            aria-label={t`${file.name} is`}
            value={role}
            disabled={busy}
            onChange={({ target }) => becomes(key, target.value)}
          >
            {Object.entries(ROLE_WORDS).map(([each, words]) => (
              <option key={each} value={each}>
                {words}
              </option>
            ))}
          </select>
          <button
            type="button"
            className="quiet"
            disabled={busy}
            onClick={() => onFiles(files.filter((other) => other.key !== key))}
          >{tx`Remove${<span className="only-read"> {file.name}</span>}`}</button>
        </li>
      ))}
    </ul>
  );
}

function sizeText(bytes: number): string {
  if (bytes < 1e6) return t`${formatFigure(Math.max(1, bytes / 1e3), 0)}\u00a0kB`;
  return t`${formatFigure(bytes / 1e6, bytes < 1e7 ? 1 : 0)}\u00a0MB`;
}
