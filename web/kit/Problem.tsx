import type { ProblemDetails } from '../api/api.ts';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { withoutPaths } from '../words/field-words.ts';

/** A refusal in the server's words: what is wrong, where, and what to do about it. */
export function Problem({
  problem,
  before,
  onSure,
}: {
  problem: ProblemDetails;
  before?: string;
  /** The reader says that the unusual figure is meant so. */
  onSure?: () => void;
}) {
  // Places in rig and trip are named as the form names them; those in files stay as they are.
  const words = /^(rig|trip|request)-invalid$/.test(problem.code) ? withoutPaths : (text: string) => text;
  const where = [problem.source, problem.place].filter(
    (part) => part !== null && !problem.detail.toLowerCase().includes(part.toLowerCase()),
  );
  // "Correct /fuel/tanks/0/litres" says no more than the line above it.
  const remedy = problem.remedy?.replace(/^Correct \/\S+$/, '').replace(/\.+$/, '') || null;
  return (
    <div className="problem" role="alert">
      <p>
        {before !== undefined && `${before} `}
        <b>{problem.title}</b>
        {where.length > 0 && ` (${where.join(', ')})`}
      </p>
      {problem.detail !== problem.title && <p>{words(problem.detail)}</p>}
      {onSure !== undefined ? (
        <p>{tx`Correct it, or ${(
          <button type="button" onClick={onSure}>
            {t('It is meant so')}
          </button>
        )}`}</p>
      ) : (
        remedy !== null && !problem.detail.includes(remedy) && <p>{words(remedy)}.</p>
      )}
    </div>
  );
}
