import { lazy, Suspense, useCallback, useEffect, useState } from 'react';
import type { TripFile } from '../server/contract/trip.ts';
import { Announcer } from './Announcer.tsx';
import { CommodityAnswer, Todo } from './answer/Answer.tsx';
import { Problem } from './kit/Problem.tsx';
import { useSetting } from './kit/use-setting.ts';
import { useTheme } from './kit/use-theme.ts';
import { OpenFiles } from './open/OpenFiles.tsx';
import { usePageDrop } from './open/use-page-drop.ts';
import { Panels } from './panels/Panels.tsx';
import { Questions } from './questions/Questions.tsx';
import { type Focus, NO_FOCUS } from './state/focus.ts';
import type { Planned } from './state/use-plan.ts';
import { useTrip } from './state/use-trip.ts';
import { Strip } from './strip/Strip.tsx';
import { TripHead } from './TripHead.tsx';
import type { UnitSystem } from './units/units.ts';

// The map's code is two thirds of all: it is fetched beside the demo, not after it.
const mapModule = import('./map/MapView.tsx');
const MapView = lazy(() => mapModule.then((module) => ({ default: module.MapView })));
void import('./map/map-handle.ts').catch(() => {
  // The map itself says so where it is drawn.
});

const UNITS: readonly UnitSystem[] = ['metric', 'us', 'imperial'];
const NO_FILES: readonly File[] = [];

/** The one page: answer on top; strip, map and panels below, linked by what the reader points at. */
export function App() {
  const { state, edit, open } = useTrip();
  const { dark, choice, choose } = useTheme();
  const [units, setUnits] = useSetting<UnitSystem>('drystage-units', UNITS, 'metric');
  const [focus, setFocus] = useState<Focus>(NO_FOCUS);
  const [opening, setOpening] = useState<readonly File[] | null>(null);
  const [planned, setPlanned] = useState<Planned | null>(null);
  const [byPlan, setByPlan] = useState(true);
  const [view, setView] = useState<'strip' | 'map'>('strip');
  const onFocus = useCallback((next: Partial<Focus>) => setFocus((last) => ({ ...last, ...next })), []);
  usePageDrop(setOpening);

  const { reply, said, opened, problem, phase, openings } = state;
  const routeName = reply?.analysis.route.name;
  useEffect(() => {
    if (routeName !== undefined) document.title = `${routeName}: Drystage`;
  }, [routeName]);
  const answer = (change: Pick<TripFile, 'aboard' | 'onward'>) => {
    if (said !== null) edit({ ...said, trip: { ...said.trip, ...change } });
  };
  // While another is made the last plan stays, dimmed; of earlier figures only, it is none.
  const {
    reply: made = null,
    stale: behind = false,
    problem: refused = null,
    stopped = false,
  } = planned ?? {};
  const plan = byPlan && !(behind && (refused !== null || stopped)) ? made : null;
  const stale = phase === 'reckoning' || phase === 'refused' ? 'page stale' : 'page';

  return (
    <div
      className={stale}
      data-phase={phase}
      data-view={view}
      data-plan={plan !== null && behind ? 'behind' : undefined}
    >
      <header className="top">
        <TripHead
          analysis={reply?.analysis ?? null}
          {...{
            units,
            theme: choice,
            onUnits: setUnits,
            onTheme: choose,
            onOpen: () => setOpening(NO_FILES),
          }}
        />
        {reply !== null && (
          <>
            <CommodityAnswer analysis={reply.analysis} units={units} commodity="fuel" />
            <CommodityAnswer analysis={reply.analysis} units={units} commodity="water" />
            <Todo analysis={reply.analysis} {...{ units, plan }} />
          </>
        )}
      </header>
      <Announcer analysis={reply?.analysis ?? null} units={units} />
      <main>
        {reply === null || said === null ? (
          <div className="opening">
            {problem === null ? <p>Opening the demo…</p> : <Problem problem={problem} />}
          </div>
        ) : (
          <>
            {problem !== null && (
              <Problem problem={problem} before="Not reckoned; the answer shown is the one before." />
            )}
            <Questions
              key={`questions ${openings}`}
              analysis={reply.analysis}
              units={units}
              onAnswer={answer}
            />
            <div className="work" key={`work ${openings}`}>
              <fieldset className="view-switch">
                <legend className="only-read">Show the route as</legend>
                {(['strip', 'map'] as const).map((each) => (
                  <label key={each}>
                    <input type="radio" name="view" checked={view === each} onChange={() => setView(each)} />{' '}
                    {each === 'strip' ? 'Strip' : 'Map'}
                  </label>
                ))}
                {made !== null && (
                  <label className="plan-switch">
                    <input
                      type="checkbox"
                      checked={byPlan}
                      onChange={(event) => setByPlan(event.target.checked)}
                    />{' '}
                    With the carry plan{byPlan && plan?.plan.status !== 'found' && ': there is none'}
                  </label>
                )}
              </fieldset>
              <section className="strip-place" aria-label="The route as a strip">
                <Strip {...{ reply, plan, units, focus, onFocus }} />
              </section>
              <section className="map-place" aria-label="The route on a map">
                <Suspense fallback={<p className="opening">Drawing the map…</p>}>
                  <MapView {...{ reply, plan, units, focus, onFocus, dark }} />
                </Suspense>
              </section>
              <section className="panels-place" aria-label="Tables, rig and notes">
                <Panels
                  {...{ reply, said, units, problem, onFocus, byPlan, onEdit: edit, onPlan: setPlanned }}
                  selectedGap={focus.gap}
                  selectedSupply={focus.supply}
                  marked={focus.marked}
                />
              </section>
            </div>
          </>
        )}
      </main>
      {opening !== null && (
        <OpenFiles
          dropped={opening}
          said={said}
          demoTrip={reply?.id === 'demo' ? (opened?.trip ?? null) : null}
          onClose={() => setOpening(null)}
          onOpened={(next, files) => {
            open(next, files);
            // Places of the route before mean nothing on this one.
            setFocus(NO_FOCUS);
            setOpening(null);
          }}
        />
      )}
    </div>
  );
}
