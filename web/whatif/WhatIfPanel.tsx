import type { WhatIf } from '../../server/contract/whatif.ts';
import { useForm } from '../form/form-context.ts';
import { fileName } from '../kit/save-file.ts';
import { t } from '../language/t.ts';
import { PlanFrame } from '../plan/PlanFrame.tsx';
import type { Focus } from '../state/focus.ts';
import type { Planned } from '../state/use-plan.ts';
import { withoutPaths } from '../words/field-words.ts';
import { saidIn } from '../words/said.ts';
import { Choices } from './Choices.tsx';
import { GaugeTable } from './GaugeTable.tsx';
import { MatterTable } from './MatterTable.tsx';
import { TurnBacks } from './TurnBacks.tsx';
import { WhatIfTable } from './WhatIfTable.tsx';

interface WhatIfPanelProps {
  planned: Planned;
  onFocus: (next: Partial<Focus>) => void;
}

const BASIS_WORDS: Record<WhatIf['basis'], string> = {
  plan: t('All of it goes by the carry plan.'),
  gaps: t(
    'There is no plan: all of it goes by full tanks at every supply that is relied on, and empty cans.',
  ),
};

/** What happens when something goes wrong, what matters most, where to turn back, and what the gauge must show. */
export function WhatIfPanel({ planned, onFocus }: WhatIfPanelProps) {
  const { analysis, units } = useForm();
  const file = fileName(analysis.route.name);
  const { kind } = analysis.rig.fuel;
  return (
    <PlanFrame planned={planned}>
      {({ whatIf, gauge }) => (
        <>
          <p>{BASIS_WORDS[whatIf.basis]}</p>
          <WhatIfTable rows={whatIf.rows} {...{ units, kind, file, onFocus }} />
          {whatIf.cautions.length > 0 && (
            <ul>
              {whatIf.cautions.map((caution) => (
                <li key={`${caution.code} ${caution.text}`}>{withoutPaths(saidIn(units, caution))}</li>
              ))}
            </ul>
          )}
          <Choices />
          <MatterTable matters={whatIf.matters} units={units} />
          <TurnBacks turnBacks={whatIf.turnBacks} kind={kind} units={units} />
          <GaugeTable rows={gauge.rows} {...{ units, file, onFocus }} />
        </>
      )}
    </PlanFrame>
  );
}
