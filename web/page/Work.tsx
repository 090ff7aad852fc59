import { type CSSProperties, lazy, type ReactNode, Suspense, useId } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import type { FormState } from '../form/form-context.ts';
import { oneOf, useKept } from '../kit/hooks/use-setting.ts';
import { t } from '../language/t.ts';
import { positionAt } from '../map/geometry/nearest-km.ts';
import { hasWebGl } from '../map/has-webgl.ts';
import { type PanelSize, Panels } from '../panels/Panels.tsx';
import type { Focus } from '../state/focus.ts';
import type { Look } from '../state/use-look.ts';
import type { Planned } from '../state/use-plan.ts';
import { Strip } from '../strip/Strip.tsx';
import { PANEL_WIDTH, PanelsDivider } from './PanelsDivider.tsx';

// The map's code is two thirds of all: it is fetched beside the demo, not after it.
const mapModule = import('../map/MapView.tsx');
const MapView = lazy(() => mapModule.then((module) => ({ default: module.MapView })));
if (hasWebGl())
  void import('../map/map-handle.ts').catch(() => {
    // The map itself says so where it is drawn.
  });

/** Whether the panels take the map's place as well. */
const PANEL_SIZE = oneOf<PanelSize>('drystage-panels', ['normal', 'wide']);

interface WorkProps {
  reply: AnalysisReply;
  form: FormState;
  look: Look;
  planned: Planned;
  /** The plan that strip and map go by. */
  plan: PlanReply | null;
  dark: boolean;
  children: ReactNode;
}

/** Strip, map and panels, linked by what the reader points at. */
export function Work({ reply, form, look, planned, plan, dark, children }: WorkProps) {
  const { focus, tab, onFocus, onTab } = look;
  const { units } = form;
  // A place of the strip is one of the route.
  const onStrip = (next: Partial<Focus>) => {
    const km = next.marked?.at(-1);
    const at = km === undefined ? null : positionAt(reply.map.line, km);
    onFocus(at === null ? next : { ...next, place: { lon: at[0], lat: at[1] } });
  };
  const [percent, setPercent] = useKept(PANEL_WIDTH);
  const [size, setSize] = useKept(PANEL_SIZE);
  const panelsId = useId();
  return (
    <div className="work" data-panels={size} style={{ '--panels-percent': percent } as CSSProperties}>
      {children}
      <section className="strip-place" aria-label={t('The route as a strip')}>
        <Strip {...{ reply, plan, units, focus }} onFocus={onStrip} />
      </section>
      <section className="map-place" aria-label={t('The route on a map')}>
        <Suspense fallback={<p className="opening">{t('Drawing the map…')}</p>}>
          <MapView {...{ reply, plan, units, focus, onFocus, dark }} />
        </Suspense>
      </section>
      <PanelsDivider percent={percent} onPercent={setPercent} controls={panelsId} />
      <section className="panels-place" id={panelsId} aria-label={t('Tables, rig and notes')}>
        <Panels
          {...{ reply, form, planned, tab, onTab, onFocus, size }}
          onSize={setSize}
          selectedGap={focus.gap}
          selectedSupply={focus.supply}
          marked={focus.marked}
          place={focus.place}
        />
      </section>
    </div>
  );
}
