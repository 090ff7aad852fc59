import type { Commodity } from '../../server/contract/common.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import {
  type CabStore,
  type CabTank,
  MARKS,
  readingL,
  type TankReading,
  tankReadingL,
} from '../../server/core/cab/aboard.ts';
import { cabWords } from '../../server/words/cab.ts';
import { type Entries, isStale, type Reading } from './entries.ts';
import { fromWhole, litresAtLeast, placeOf, volumeSteps, volumeUnit } from './figures.ts';
import { Step } from './Step.tsx';

interface GaugeProps {
  commodity: Commodity;
  fuelKind: FuelKind;
  store: CabStore;
  entries: Entries;
  /** Aboard here by the plan. */
  plannedL: number;
  isOpen: boolean;
  onOpen: () => void;
  onRead: (reading: Reading) => void;
}

const EIGHTH = [{ label: '⅛', step: 1 }];
const CAN = [{ label: '1', step: 1 }];

/** What the gauge of one commodity shows, as a large button that opens its steps. */
export function GaugeButton({ commodity, fuelKind, store, entries, isOpen, onOpen }: GaugeProps) {
  const reading = entries.readings[commodity];
  const what = cabWords().answer.content(commodity, fuelKind);
  return (
    <button type="button" className="gauge" aria-expanded={isOpen} onClick={onOpen}>
      <span className="soft">{cabWords().gauge(what)}</span>
      <b>{reading === null ? cabWords().notRead : readingWords(store, reading)}</b>
      <span className="soft">{reading === null ? cabWords().tapToRead : whereWords(reading, entries)}</span>
    </button>
  );
}

const whereWords = (reading: Reading, entries: Entries): string =>
  isStale(reading, entries)
    ? cabWords().readAgain(placeOf(reading.atM))
    : [
        ...(reading.cans > 0 ? [cabWords().fullCans(reading.cans)] : []),
        cabWords().readAt(placeOf(reading.atM)),
      ].join(', ');

/** "⅝ · 79 L" of one tank by its marks; else the litres of all. */
function readingWords(store: CabStore, reading: Reading): string {
  const litres = litresAtLeast(readingL(store, reading));
  const [tank] = reading.tanks;
  return reading.tanks.length === 1 && tank !== undefined && 'eighths' in tank
    ? cabWords().marks(cabWords().mark(tank.eighths), litres)
    : litres;
}

/** The steps by which one commodity is read: each tank by marks or litres, and the full cans. */
export function GaugeSteps(props: GaugeProps) {
  const { commodity, fuelKind, store, entries, plannedL, onOpen, onRead } = props;
  const { atM, left } = entries;
  const what = cabWords().answer.content(commodity, fuelKind);
  const reading = entries.readings[commodity] ?? { ...proposed(store, plannedL), atM, left };
  const read = (change: Partial<Reading>) => onRead({ ...reading, ...change, atM, left });
  const readTank = (index: number, tank: TankReading) =>
    read({ tanks: reading.tanks.map((one, place) => (place === index ? tank : one)) });
  return (
    <section className="steps" aria-label={cabWords().read(what)}>
      {store.tanks.map((tank, index) => (
        <TankSteps
          // biome-ignore lint/suspicious/noArrayIndexKey: the tanks of a rig, which may share a name, never change places
          key={index}
          {...{ tank, what }}
          reading={reading.tanks[index] ?? { litres: 0 }}
          onRead={(next) => readTank(index, next)}
        />
      ))}
      {(store.cans > 0 || reading.cans > 0) && (
        <Step
          what={cabWords().canStep(what)}
          by={CAN}
          onStep={(step) => read({ cans: Math.min(store.cans, Math.max(0, reading.cans + step)) })}
        >
          <output>{cabWords().fullCans(reading.cans)}</output>
        </Step>
      )}
      <p className="soft">
        {cabWords().planned(litresAtLeast(plannedL))} {cabWords().lowerMark}
      </p>
      <button
        type="button"
        className="wide main"
        onClick={() => {
          read({});
          onOpen();
        }}
      >
        {cabWords().readAll(what, litresAtLeast(readingL(store, reading)))}
      </button>
    </section>
  );
}

interface TankStepsProps {
  tank: CabTank;
  what: string;
  reading: TankReading;
  onRead: (reading: TankReading) => void;
}

function TankSteps({ tank, what, reading, onRead }: TankStepsProps) {
  const litres = tankReadingL(tank, reading);
  const eighths = 'eighths' in reading ? reading.eighths : eighthsOf(tank, litres);
  const name = cabWords().tank(tank.name);
  return (
    <div className="tank">
      <p>{name}</p>
      <Step
        what={cabWords().gaugeStep(`${what}, ${name}`)}
        by={EIGHTH}
        onStep={(step) => onRead({ eighths: Math.min(MARKS, Math.max(0, eighths + step)) })}
      >
        <output>
          {'eighths' in reading
            ? cabWords().marks(cabWords().mark(eighths), litresAtLeast(litres))
            : litresAtLeast(litres)}
        </output>
      </Step>
      <Step
        what={cabWords().litreStep(`${what}, ${name}`, volumeUnit())}
        by={volumeSteps().map(({ label, stepL }) => ({ label, step: stepL }))}
        onStep={(step) => onRead({ litres: tankReadingL(tank, { litres: fromWhole(litres) + step }) })}
      />
    </div>
  );
}

/** The mark at or below which so much stands. */
const eighthsOf = ({ filledL, unusableL }: CabTank, usableL: number): number =>
  Math.min(MARKS, Math.floor(((usableL + unusableL) / filledL) * MARKS + 1e-9));

/** Where reading begins: what the plan has there, a can being poured as soon as the tanks have room. Nothing is read by it. */
function proposed({ tanks, canL }: CabStore, plannedL: number): Pick<Reading, 'tanks' | 'cans'> {
  const tanksL = tanks.reduce((sum, tank) => sum + tankReadingL(tank, { litres: plannedL }), 0);
  const cans = Math.max(0, Math.ceil((plannedL - tanksL) / canL - 1e-6));
  let restL = Math.max(0, plannedL - cans * canL);
  const litres = tanks.map((tank) => {
    const inTankL = tankReadingL(tank, { litres: restL });
    restL -= inTankL;
    return { litres: inTankL };
  });
  return { tanks: litres, cans };
}
