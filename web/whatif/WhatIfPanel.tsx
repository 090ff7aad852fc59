import type { Analysis } from '../../server/contract/analysis.ts';
import type { WhatIf } from '../../server/contract/whatif.ts';
import type { Focus } from '../focus.ts';
import { PlanFrame } from '../plan/PlanFrame.tsx';
import type { Planned } from '../plan/use-plan.ts';
import { withoutPaths } from '../rig/field-words.ts';
import { fileName } from '../save-file.ts';
import type { UnitSystem } from '../units.ts';
import { GaugeTable } from './GaugeTable.tsx';
import { MatterTable } from './MatterTable.tsx';
import { TurnBacks } from './TurnBacks.tsx';
import { WhatIfTable } from './WhatIfTable.tsx';

interface WhatIfPanelProps {
  planned: Planned;
  analysis: Analysis;
  units: UnitSystem;
  onFocus: (next: Partial<Focus>) => void;
}

const BASIS_WORDS: Record<WhatIf['basis'], string> = {
  plan: 'All of it goes by the carry plan.',
  gaps: 'There is no plan: all of it goes by full tanks at every supply that counts, and empty cans.',
};

/** What happens when something goes wrong, what matters most, where to turn back, and what the gauge must show. */
export function WhatIfPanel({ planned, analysis, units, onFocus }: WhatIfPanelProps) {
  const file = fileName(analysis.route.name);
  const { kind } = analysis.rig.fuel;
  return (
    <PlanFrame planned={planned} units={units}>
      {({ whatIf, gauge }) => (
        <>
          <p>{BASIS_WORDS[whatIf.basis]}</p>
          <WhatIfTable rows={whatIf.rows} {...{ units, kind, file, onFocus }} />
          {whatIf.cautions.length > 0 && (
            <ul>
              {whatIf.cautions.map(({ code, text }) => (
                <li key={`${code} ${text}`}>{withoutPaths(text)}</li>
              ))}
            </ul>
          )}
          <MatterTable matters={whatIf.matters} units={units} />
          <TurnBacks turnBacks={whatIf.turnBacks} kind={kind} units={units} />
          <GaugeTable rows={gauge.rows} {...{ units, file, onFocus }} />
        </>
      )}
    </PlanFrame>
  );
}
