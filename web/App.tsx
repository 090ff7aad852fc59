import { useCallback, useEffect, useMemo, useState } from 'react';
import type { TripFile } from '../server/contract/trip.ts';
import { standingOf } from './answer/PlanTodo.tsx';
import type { ProblemDetails } from './api/api.ts';
import { KeepRow } from './kept/KeepRow.tsx';
import { MapsDialog } from './kept/maps/MapsDialog.tsx';
import { TripsDialog } from './kept/TripsDialog.tsx';
import { TwoVersions } from './kept/TwoVersions.tsx';
import { AT_FIRST, useOpenTrip } from './kept/use-open-trip.ts';
import { type KeptAs, useKept } from './kit/hooks/use-setting.ts';
import { useTheme } from './kit/hooks/use-theme.ts';
import { Problem } from './kit/Problem.tsx';
import { t } from './language/t.ts';
import { OfflineNote } from './offline/OfflineNote.tsx';
import { OpenFiles } from './open/OpenFiles.tsx';
import { usePageDrop } from './open/use-page-drop.ts';
import { Announcer } from './page/Announcer.tsx';
import { PageHead } from './page/PageHead.tsx';
import { Refusal } from './page/Refusal.tsx';
import { ViewSwitch } from './page/ViewSwitch.tsx';
import { Work } from './page/Work.tsx';
import { Questions } from './questions/Questions.tsx';
import { type Go, useAddress } from './state/use-address.ts';
import { useLook } from './state/use-look.ts';
import { planToGoBy, usePlan } from './state/use-plan.ts';
import { storedUnits, unitsFromStored } from './units/choice.ts';
import type { UnitSystem } from './units/units.ts';

const UNITS: KeptAs<UnitSystem> = { key: 'drystage-units', read: unitsFromStored, write: storedUnits };
const NO_FILES: readonly File[] = [];

/** The one page: answer on top; strip, map and panels below. */
export function App() {
  const [address, go] = useAddress();
  const look = useLook(address, go);
  const page = useOpenTrip(address, go, look);
  const { state, kept, keeper } = page;
  const { edit } = page;
  const { reply, said, opened, problem, phase, openings } = state;
  const { dark, choice, choose } = useTheme();
  const [units, setUnits] = useKept(UNITS);
  const [dialog, setDialog] = useState<PageDialog | null>(null);
  usePageDrop(useCallback((files: readonly File[]) => setDialog(dialogFor(files)), []));
  useTitle(kept.trip?.name ?? reply?.analysis.route.name);

  const [byPlan, setByPlan] = useState(true);
  const { planned, forget } = usePlan({
    // Of what the answer shown was reckoned with: what is refused is not planned for.
    asked: useMemo(() => (reply === null ? null : { id: reply.id, ...reply.said }), [reply]),
    looked: look.tab === 'carry' || look.tab === 'what-if',
    byPlan,
    // What is said, once more: a route that the server no longer has is then sent again.
    onLost: useCallback(() => {
      if (said !== null) edit(said);
    }, [said, edit]),
  });
  const plan = byPlan ? planToGoBy(planned) : null;
  const coming = byPlan && planned.stale && planned.problem === null && !planned.stopped;
  const analysis = reply?.analysis ?? null;
  const form = useMemo(
    () => (analysis === null || said === null ? null : { analysis, said, units, problem, onEdit: edit }),
    [analysis, said, units, problem, edit],
  );
  const answer = (change: Pick<TripFile, 'aboard' | 'onward' | 'extracts'>) => {
    if (said !== null) edit({ ...said, trip: { ...said.trip, ...change } });
  };

  return (
    <div
      className={phase === 'reckoning' || phase === 'refused' ? 'page stale' : 'page'}
      data-phase={phase}
      data-view={look.view}
      data-plan={plan === null ? (coming ? 'coming' : undefined) : planned.stale ? 'behind' : 'there'}
    >
      <PageHead
        {...{
          analysis,
          plan,
          coming,
          standing: standingOf(planned),
          units,
          theme: choice,
          onUnits: setUnits,
          onTheme: choose,
        }}
        onOpen={() => setDialog({ kind: 'files', files: NO_FILES })}
        keep={
          <KeepRow
            {...{ keeper, kept }}
            onTrips={() => setDialog({ kind: 'trips', dropped: null })}
            onMaps={() => setDialog({ kind: 'maps' })}
          />
        }
      />
      <OfflineNote />
      {kept.saving.state === 'elsewhere' && <TwoVersions kept={kept.saving.kept} keeper={keeper} />}
      <Announcer {...{ analysis, plan, units }} />
      <main>
        {reply === null || form === null ? (
          <div className="opening">
            {problem === null ? <p>{t('Opening…')}</p> : <NotOpened problem={problem} go={go} />}
          </div>
        ) : (
          <>
            {problem !== null && <Refusal problem={problem} said={form.said} onEdit={edit} />}
            <Questions
              key={`questions ${openings}`}
              analysis={reply.analysis}
              units={units}
              onAnswer={answer}
            />
            <Work key={`work ${openings}`} {...{ reply, form, look, planned, plan, dark }}>
              <ViewSwitch
                view={look.view}
                onView={look.onView}
                byPlan={
                  planned.reply === null
                    ? null
                    : { checked: byPlan, found: plan?.plan.status === 'found', onChange: setByPlan }
                }
              />
            </Work>
          </>
        )}
      </main>
      {dialog?.kind === 'files' && (
        <OpenFiles
          dropped={dialog.files}
          said={said}
          demoTrip={reply?.id === 'demo' ? (opened?.trip ?? null) : null}
          onClose={() => setDialog(null)}
          onOpened={(own, files) => {
            forget();
            page.show(own, files);
            setDialog(null);
          }}
        />
      )}
      {dialog?.kind === 'maps' && analysis !== null && (
        <MapsDialog
          {...{ analysis, keeper }}
          tripId={kept.trip?.id ?? 'demo'}
          onClose={() => setDialog(null)}
        />
      )}
      {dialog?.kind === 'trips' && (
        <TripsDialog
          openId={kept.trip?.id ?? 'demo'}
          dropped={dialog.dropped}
          onClose={() => setDialog(null)}
          onTrip={(id) => {
            forget();
            look.startAfresh();
            go({ ...AT_FIRST, trip: id === 'demo' ? null : id });
            setDialog(null);
          }}
        />
      )}
    </div>
  );
}

/** What lies over the page. */
type PageDialog =
  | { readonly kind: 'files'; readonly files: readonly File[] }
  | { readonly kind: 'trips'; readonly dropped: File | null }
  | { readonly kind: 'maps' };

/** A trip's one file is opened as it is; all else is for a new trip. */
function dialogFor(files: readonly File[]): PageDialog {
  const [first, ...more] = files;
  const isTrip = first !== undefined && more.length === 0 && /\.drystage\.json$/i.test(first.name);
  return isTrip ? { kind: 'trips', dropped: first } : { kind: 'files', files };
}

/** Why the trip that the address names is not there, with a way on. */
const NotOpened = ({ problem, go }: { problem: ProblemDetails; go: Go }) => (
  <>
    <Problem problem={problem} />
    <button type="button" onClick={() => go({ ...AT_FIRST, trip: null })}>
      {t('Open the demo')}
    </button>
  </>
);

function useTitle(routeName: string | undefined): void {
  useEffect(() => {
    if (routeName !== undefined) document.title = t`${routeName}: Drystage`;
  }, [routeName]);
}
