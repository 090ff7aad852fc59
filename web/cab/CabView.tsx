import { useEffect, useState } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import { readingL } from '../../server/core/cab/aboard.ts';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import type { CabRuns } from '../../server/core/cab/cab-runs.ts';
import { type CabAsk, type CabState, cabState } from '../../server/core/cab/cab-state.ts';
import { byCommodity } from '../../server/core/plan/side/other-of.ts';
import { COMMODITIES } from '../../server/core/quantity/commodities.ts';
import { cabWords } from '../../server/words/cab.ts';
import { Answer } from './Answer.tsx';
import { answerLines } from './answer-lines.ts';
import { type Entries, isStale, useEntries } from './entries.ts';
import { Failed } from './Failed.tsx';
import { placeOf } from './figures.ts';
import { GaugeButton, GaugeSteps } from './Gauge.tsx';
import { Next, Others } from './Next.tsx';
import { nextLines, othersNear, stopNear } from './places.ts';
import { Where } from './Where.tsx';

interface CabViewProps {
  file: CabFile;
  runs: CabRuns;
}

type Open = 'km' | Commodity | null;

/** The view from the seat: where one is, what is aboard, whether to go on or back, and what comes next. */
export function CabView({ file, runs }: CabViewProps) {
  const { entries, change, areKept } = useEntries(file.key);
  const [open, setOpen] = useState<Open>(null);
  const [isLost, setLost] = useState(false);
  useEffect(() => {
    document.documentElement.dataset.look = entries.red ? 'red' : 'plain';
  }, [entries.red]);
  const toggle = (which: Open) => setOpen((before) => (before === which ? null : which));
  const { atM, left } = entries;
  const state = cabState(runs, askOf(file, entries));
  return (
    <main className="cab">
      <Head file={file} red={entries.red} onRed={() => change({ red: !entries.red })} />
      <Where
        {...{ file, entries, change }}
        onLost={setLost}
        isOpen={open === 'km'}
        onOpen={() => toggle('km')}
      />
      {isLost ? (
        <p className="trouble">{cabWords().lost}</p>
      ) : (
        <>
          <AtStop {...{ runs, entries, change }} />
          <Gauges {...{ file, runs, entries, change, open, toggle }} />
          <Answer lines={answerLines(file, state, atM)} stale={staleWords(file, entries)} />
          <Others supplies={othersNear(file, state, atM)} atM={atM} fuelKind={file.fuelKind} />
          <Failed
            {...{ file, state, failed: entries.failed }}
            onFailed={(commodity, id) => change({ failed: withFailed(entries.failed, commodity, id) })}
          />
          <Next lines={nextLines(file, state, { atM, left })} />
        </>
      )}
      <p className="soft">
        {areKept ? cabWords().kept : cabWords().notKept} {cabWords().aid}
      </p>
    </main>
  );
}

/** What was read too far from here counts as not read. */
function askOf({ stores }: CabFile, { atM, left, readings, failed }: Entries): CabAsk {
  const litres = byCommodity((commodity) => {
    const reading = readings[commodity];
    return reading === null || isStale(reading, { atM, left }) ? null : readingL(stores[commodity], reading);
  });
  return { atM, left, failed, litres };
}

const staleWords = ({ fuelKind }: CabFile, entries: Entries): string[] =>
  COMMODITIES.flatMap((commodity) => {
    const reading = entries.readings[commodity];
    return reading !== null && isStale(reading, entries)
      ? [cabWords().answer.stale(cabWords().answer.content(commodity, fuelKind), placeOf(reading.atM))]
      : [];
  });

const withFailed = (failed: Entries['failed'], commodity: Commodity, id: string): Entries['failed'] => ({
  ...failed,
  [commodity]: failed[commodity].includes(id)
    ? failed[commodity].filter((one) => one !== id)
    : [...failed[commodity], id],
});

function Head({ file, red, onRed }: { file: CabFile; red: boolean; onRed: () => void }) {
  return (
    <header>
      <p className="soft">
        {file.route} · {cabWords().offline}
      </p>
      <button type="button" aria-pressed={red} aria-label={cabWords().nightLabel} onClick={onRed}>
        {red ? cabWords().nightOff : cabWords().night}
      </button>
      {file.notice !== null && <p className="notice">{file.notice}</p>}
      {file.plan !== 'found' && <p className="trouble">{cabWords().noPlan[file.plan]}</p>}
    </header>
  );
}

type Changing = { entries: Entries; change: (change: Partial<Entries>) => void };

/** At a stop of the plan: whether it is still to be filled there, or done. */
function AtStop({ runs, entries, change }: Changing & { runs: CabRuns }) {
  const stop = stopNear(runs, entries.atM);
  if (stop === null) return null;
  return (
    <fieldset className="choice">
      <legend>{cabWords().stopHere(typeof stop.name === 'string' ? stop.name : '')}</legend>
      <button type="button" aria-pressed={!entries.left} onClick={() => change({ left: false })}>
        {cabWords().before}
      </button>
      <button
        type="button"
        aria-pressed={entries.left}
        onClick={() => change({ left: true, atM: stop.atM, offM: null })}
      >
        {cabWords().after}
      </button>
    </fieldset>
  );
}

interface GaugesProps extends Changing {
  file: CabFile;
  runs: CabRuns;
  open: Open;
  toggle: (which: Open) => void;
}

function Gauges({ file, runs, entries, change, open, toggle }: GaugesProps) {
  const planned = plannedAt(runs, entries);
  const gauge = (commodity: Commodity) => ({
    commodity,
    fuelKind: file.fuelKind,
    store: file.stores[commodity],
    entries,
    plannedL: planned[commodity],
    isOpen: open === commodity,
    onOpen: () => toggle(commodity),
    onRead: (reading: Entries['readings']['fuel']) =>
      change({ readings: { ...entries.readings, [commodity]: reading } }),
  });
  return (
    <>
      <div className="gauges">
        {COMMODITIES.map((commodity) => (
          <GaugeButton key={commodity} {...gauge(commodity)} />
        ))}
      </div>
      {(open === 'fuel' || open === 'water') && <GaugeSteps {...gauge(open)} />}
    </>
  );
}

/** Aboard there by the plan: what steps begin with. */
function plannedAt(runs: CabRuns, { atM, left }: Entries): Record<Commodity, number> {
  const none = { fuel: [], water: [] };
  const state: CabState = cabState(runs, { atM, left, litres: { fuel: 0, water: 0 }, failed: none });
  return byCommodity((commodity) => {
    const side = state[commodity];
    return 'none' in side ? 0 : side.plannedL;
  });
}
