import type { ProblemDetails } from '../api/api.ts';
import { Problem } from '../kit/Problem.tsx';
import { t } from '../language/t.ts';
import type { Said } from '../state/said.ts';
import { vouchableAt, withSure } from '../state/vouch.ts';

interface RefusalProps {
  problem: ProblemDetails;
  said: Said;
  onEdit: (said: Said) => void;
}

/** Why an edit was not reckoned. A figure that is only unusual can be marked as meant so. */
export function Refusal({ problem, said, onEdit }: RefusalProps) {
  const unusual = vouchableAt(problem);
  const sure = unusual === null ? {} : { onSure: () => onEdit(withSure(said, unusual.file, unusual.path)) };
  return (
    <Problem problem={problem} before={t('Not reckoned; the answer shown is the one before.')} {...sure} />
  );
}
