import { lazy, memo, Suspense, useCallback, useEffect, useMemo, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { Passing } from '../../server/contract/analysis.ts';
import type { AnalysisReply } from '../../server/contract/map.ts';
import type { ProblemDetails } from '../api/api.ts';
import type { OtherRig } from '../compare/ComparePanel.tsx';
import type { Focus } from '../state/focus.ts';
import type { Said } from '../state/said.ts';
import { type Planned, usePlan } from '../state/use-plan.ts';
import type { UnitSystem } from '../units/units.ts';
import { type Finding, withFinding } from './findings.ts';
import { GapsPanel } from './GapsPanel.tsx';
import { NotesPanel } from './NotesPanel.tsx';
import { SuppliesPanel } from './SuppliesPanel.tsx';

// Fetched beside the page, not on the first look: the form must be there when the server no longer is.
const rigModule = import('../rig/RigPanel.tsx');
const RigPanel = lazy(() => rigModule.then((module) => ({ default: module.RigPanel })));

const daysModule = import('../days/DaysPanel.tsx');
const DaysPanel = lazy(() => daysModule.then((module) => ({ default: module.DaysPanel })));
const compareModule = import('../compare/ComparePanel.tsx');
const ComparePanel = lazy(() => compareModule.then((module) => ({ default: module.ComparePanel })));
const carryModule = import('../carry/CarryPanel.tsx');
const CarryPanel = lazy(() => carryModule.then((module) => ({ default: module.CarryPanel })));
const whatIfModule = import('../whatif/WhatIfPanel.tsx');
const WhatIfPanel = lazy(() => whatIfModule.then((module) => ({ default: module.WhatIfPanel })));

interface PanelsProps {
  reply: AnalysisReply;
  said: Said;
  units: UnitSystem;
  selectedGap: Focus['gap'];
  selectedSupply: Focus['supply'];
  marked: Focus['marked'];
  problem: ProblemDetails | null;
  onFocus: (next: Partial<Focus>) => void;
  onEdit: (said: Said) => void;
  /** Strip and map go by the plan, once there is one: it is then kept up to date. */
  byPlan: boolean;
  /** Tells strip and map what has become of the plan; null with these panels. */
  onPlan: (planned: Planned | null) => void;
}

/** The tables, the form and the notes, one at a time. Pointing along the route changes nothing in here. */
export const Panels = memo(function Panels(props: PanelsProps) {
  const {
    reply,
    said,
    units,
    selectedGap,
    selectedSupply,
    marked,
    problem,
    byPlan,
    onFocus,
    onEdit,
    onPlan,
  } = props;
  const { analysis, map } = reply;
  const [tab, setTab] = useState('gaps');
  // Held here, so that they are still there when the reader comes back to the tab.
  const [others, setOthers] = useState<readonly OtherRig[]>([]);

  const form = useMemo(
    () => ({ analysis, said, units, problem, onEdit }),
    [analysis, said, units, problem, onEdit],
  );
  // What is said, once more: a route that the server no longer has is then sent again.
  const sendAgain = useCallback(() => onEdit(said), [said, onEdit]);
  // Solving takes the server's time: a plan is asked for only while it is looked at, here or on strip and map.
  const [made, setMade] = useState(false);
  const planned = usePlan(
    reply.id,
    said,
    tab === 'carry' || tab === 'what-if' || (made && byPlan),
    sendAgain,
  );
  const { reply: plan, stale, problem: planProblem } = planned;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what else is in `planned` means nothing outside
  useEffect(() => {
    if (plan !== null) setMade(true);
    onPlan(planned);
  }, [plan, stale, planProblem, planned.stopped, onPlan]);
  useEffect(() => () => onPlan(null), [onPlan]);

  // What is chosen on the map or the strip shows in its table.
  useEffect(() => {
    if (selectedSupply !== null) setTab('supplies');
  }, [selectedSupply]);
  useEffect(() => {
    // While days are planned, a click on the strip marks a place for them.
    if (selectedGap !== null) setTab((last) => (last === 'days' ? last : 'gaps'));
  }, [selectedGap]);

  const found = (passing: Passing, finding: Finding) =>
    onEdit(withFinding(said, passing, finding, new Date().toISOString().slice(0, 10)));

  return (
    <Tabs className="panels" selectedKey={tab} onSelectionChange={(key) => setTab(String(key))}>
      <TabList aria-label="About the trip" className="tab-list">
        <Tab id="gaps">Gaps</Tab>
        <Tab id="supplies">Supplies</Tab>
        <Tab id="rig">Rig</Tab>
        <Tab id="days">Days</Tab>
        <Tab id="carry">Carry</Tab>
        <Tab id="what-if">What if</Tab>
        <Tab id="compare">Compare</Tab>
        <Tab id="notes">Notes</Tab>
      </TabList>
      <TabPanel id="gaps" className="tab-panel">
        <GapsPanel analysis={analysis} units={units} selected={selectedGap} onFocus={onFocus} />
      </TabPanel>
      <TabPanel id="supplies" className="tab-panel">
        <SuppliesPanel
          analysis={analysis}
          units={units}
          selected={selectedSupply}
          onFocus={onFocus}
          washingSources={said.trip.washingSources ?? []}
          onFound={found}
        />
      </TabPanel>
      <TabPanel id="rig" className="tab-panel">
        <Suspense
          fallback={
            <p className="soft" aria-busy="true">
              Opening the rig…
            </p>
          }
        >
          <RigPanel analysis={analysis} said={said} units={units} problem={problem} onEdit={onEdit} />
        </Suspense>
      </TabPanel>
      <TabPanel id="days" className="tab-panel">
        <Suspense
          fallback={
            <p className="soft" aria-busy="true">
              Opening the days…
            </p>
          }
        >
          <DaysPanel {...{ analysis, said, units, problem, marked, onFocus, onEdit }} />
        </Suspense>
      </TabPanel>
      <TabPanel id="carry" className="tab-panel">
        <Suspense
          fallback={
            <p className="soft" aria-busy="true">
              Opening the plan…
            </p>
          }
        >
          <CarryPanel {...{ planned, form, onFocus }} />
        </Suspense>
      </TabPanel>
      <TabPanel id="what-if" className="tab-panel">
        <Suspense
          fallback={
            <p className="soft" aria-busy="true">
              Opening the what-ifs…
            </p>
          }
        >
          <WhatIfPanel {...{ planned, form, onFocus }} />
        </Suspense>
      </TabPanel>
      <TabPanel id="compare" className="tab-panel">
        <Suspense
          fallback={
            <p className="soft" aria-busy="true">
              Opening the comparison…
            </p>
          }
        >
          <ComparePanel id={reply.id} {...{ said, units, others }} onOthers={setOthers} />
        </Suspense>
      </TabPanel>
      <TabPanel id="notes" className="tab-panel">
        <NotesPanel analysis={analysis} notice={map.notice} units={units} />
      </TabPanel>
      <p className="caution-line">
        Planning aid: confirm every point.{' '}
        <button type="button" className="quiet" onClick={() => setTab('notes')}>
          All cautions
        </button>
      </p>
    </Tabs>
  );
});
