import { type ComponentType, lazy, memo, type ReactNode, Suspense, useRef, useState } from 'react';
import type { Passing } from '../../server/contract/analysis.ts';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { OtherRig } from '../compare/ComparePanel.tsx';
import { FormContext, type FormState } from '../form/form-context.ts';
import { isPhone } from '../kit/is-phone.ts';
import { Tabs } from '../kit/Tabs.tsx';
import { t } from '../language/t.ts';
import { tx } from '../language/tx.ts';
import { type Finding, withFinding } from '../notes/findings.ts';
import type { Focus } from '../state/focus.ts';
import { groupOf, TAB_GROUPS, type Tab, type TabGroup } from '../state/tabs.ts';
import type { Planned } from '../state/use-plan.ts';
import { today } from '../words/local-time.ts';
import { GapsPanel } from './GapsPanel.tsx';
import { NotesPanel } from './NotesPanel.tsx';
import { SuppliesPanel } from './SuppliesPanel.tsx';

/** Fetched beside the page, not on the first look: the form must be there when the server no longer is. */
const beside = <P extends object>(component: Promise<ComponentType<P>>) =>
  lazy(() => component.then((loaded) => ({ default: loaded })));

const RigPanel = beside(import('../rig/RigPanel.tsx').then((module) => module.RigPanel));
const TripPanel = beside(import('../rig/TripPanel.tsx').then((module) => module.TripPanel));
const DaysPanel = beside(import('../days/DaysPanel.tsx').then((module) => module.DaysPanel));
const ComparePanel = beside(import('../compare/ComparePanel.tsx').then((module) => module.ComparePanel));
const CarryPanel = beside(import('../carry/CarryPanel.tsx').then((module) => module.CarryPanel));
const WhatIfPanel = beside(import('../whatif/WhatIfPanel.tsx').then((module) => module.WhatIfPanel));

interface PanelProps {
  reply: AnalysisReply;
  form: FormState;
  planned: Planned;
  selectedGap: Focus['gap'];
  selectedSupply: Focus['supply'];
  marked: Focus['marked'];
  place: Focus['place'];
  onFocus: (next: Partial<Focus>) => void;
}

interface ComparedRigs {
  others: readonly OtherRig[];
  onOthers: (others: readonly OtherRig[]) => void;
}

const GROUP_WORDS: Record<TabGroup, string> = {
  answer: t('Answer'),
  supplies: t('Supplies'),
  vehicle: t('Vehicle'),
  trip: t('Trip'),
  plan: t('Plan'),
};
const GROUP_LIST = (Object.keys(TAB_GROUPS) as TabGroup[]).map((key) => ({ key, words: GROUP_WORDS[key] }));

const TAB_WORDS: Record<Tab, string> = {
  gaps: t('Gaps'),
  supplies: t('Points'),
  notes: t('Notes'),
  rig: t('Rig'),
  compare: t('Compare'),
  days: t('Days'),
  settings: t('Settings'),
  carry: t('Carry'),
  'what-if': t('What if'),
};

/** What is said while a panel is still fetched. */
const OPENING_WORDS: Record<Tab, string> = {
  gaps: '',
  supplies: '',
  notes: '',
  rig: t('Opening the rig…'),
  compare: t('Opening the comparison…'),
  days: t('Opening the days…'),
  settings: t('Opening the trip…'),
  carry: t('Opening the plan…'),
  'what-if': t('Opening the what-ifs…'),
};

export type PanelSize = 'normal' | 'wide';

interface PanelsProps extends PanelProps {
  tab: Tab;
  onTab: (tab: Tab) => void;
  size: PanelSize;
  onSize: (size: PanelSize) => void;
}

/** The tables, the form and the notes, one at a time. Pointing along the route changes nothing in here. */
export const Panels = memo(function Panels({ tab, onTab, size, onSize, ...props }: PanelsProps) {
  // Held here, so that they are still there when the reader comes back to the tab.
  const [others, onOthers] = useState<readonly OtherRig[]>([]);
  const group = groupOf(tab);
  const place = useRef<HTMLDivElement>(null);
  return (
    <div className="panels" ref={place}>
      <Tabs
        label={t('About the trip')}
        tabs={GROUP_LIST}
        selected={group}
        onSelect={(next) => {
          onTab(TAB_GROUPS[next][0]);
          // Its tabs stand at the foot of the screen: what they choose has to come up.
          if (isPhone()) place.current?.scrollIntoView({ block: 'start' });
        }}
        beside={<BesideTabs {...{ size, onSize }} />}
      >
        <WithinGroup {...{ group, tab, onTab }} />
        <FormContext.Provider value={props.form}>
          <Suspense key={tab} fallback={<p className="soft">{OPENING_WORDS[tab]}</p>}>
            {panelOf(tab, { ...props, others, onOthers })}
          </Suspense>
        </FormContext.Provider>
      </Tabs>
      <p className="caution-line">{tx`Planning aid: confirm every point. ${(
        <button type="button" className="quiet" onClick={() => onTab('notes')}>
          {t('All cautions')}
        </button>
      )}`}</p>
    </div>
  );
});

/** On a wide page a button that gives the panels the map's place, on a phone one that leads back to strip and map. */
function BesideTabs({ size, onSize }: Pick<PanelsProps, 'size' | 'onSize'>) {
  return (
    <>
      <button
        type="button"
        className="to-route"
        onClick={() => document.querySelector('.view-switch')?.scrollIntoView({ block: 'start' })}
      >
        {t('Route')}
        <span className="only-read">{t(': strip and map')}</span>
      </button>
      <button
        type="button"
        className="quiet to-wide"
        onClick={() => onSize(size === 'wide' ? 'normal' : 'wide')}
      >
        {size === 'wide' ? t('Normal') : t('Wide')}
        <span className="only-read"> {t('panels')}</span>
      </button>
    </>
  );
}

/** The panels of one group, where it has more than one. */
function WithinGroup({ group, tab, onTab }: { group: TabGroup; tab: Tab; onTab: (tab: Tab) => void }) {
  const tabs: readonly Tab[] = TAB_GROUPS[group];
  if (tabs.length < 2) return null;
  return (
    <nav className="within-group" aria-label={GROUP_WORDS[group]}>
      {tabs.map((each) => (
        <button
          key={each}
          type="button"
          aria-current={each === tab ? 'page' : undefined}
          onClick={() => onTab(each)}
        >
          {TAB_WORDS[each]}
        </button>
      ))}
    </nav>
  );
}

function panelOf(tab: Tab, props: PanelProps & ComparedRigs): ReactNode {
  const { reply, form, planned, selectedGap, selectedSupply, marked, place, onFocus } = props;
  const { analysis, map } = reply;
  const { said, units, onEdit } = form;
  switch (tab) {
    case 'gaps':
      return <GapsPanel {...{ analysis, units, onFocus }} selected={selectedGap} />;
    case 'supplies':
      return (
        <SuppliesPanel
          {...{ analysis, map, units, onFocus }}
          selected={selectedSupply}
          washingSources={said.trip.washingSources ?? []}
          onFound={(passing: Passing, finding: Finding) =>
            onEdit(withFinding(said, passing, finding, today()))
          }
        />
      );
    case 'rig':
      return <RigPanel />;
    case 'settings':
      return <TripPanel />;
    case 'days':
      return <DaysPanel {...{ marked, onFocus }} />;
    case 'carry':
      return <CarryPanel id={reply.id} {...{ planned, onFocus }} />;
    case 'what-if':
      return <WhatIfPanel {...{ planned, onFocus }} />;
    case 'compare':
      return <ComparePanel id={reply.id} others={props.others} onOthers={props.onOthers} />;
    case 'notes':
      return <NotesPanel {...{ analysis, units, said, place, onEdit }} notice={map.notice} />;
  }
}
