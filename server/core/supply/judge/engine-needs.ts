import type { RigFile } from '../../../contract/rig.ts';

/** What the engine takes: lowest octane number (RON), most ethanol and most biodiesel in percent, each where told. */
export type EngineNeeds = NonNullable<RigFile['fuel']['engine']>;

interface Grade {
  /** RON, the least that the grade has; null where its name does not tell. */
  octane: number | null;
  /** Percent of ethanol, the most that it may hold; null where its name does not tell. */
  ethanol: number | null;
}

/**
 * What the names of petrols tell. E5 and E10 have RON 95 at least (EN 228, check-values F3; E10 by the same standard,
 * from memory). Numbers are read as RON: where AKI is counted the same petrol has 4 to 5 less (from memory), so a
 * number read so never says too much.
 */
const NAMED_GRADES: Readonly<Record<string, Grade>> = {
  'fuel:petrol': { octane: null, ethanol: null },
  'fuel:gasoline': { octane: null, ethanol: null },
  'fuel:e5': { octane: 95, ethanol: 5 },
  'fuel:e10': { octane: 95, ethanol: 10 },
  'fuel:e85': { octane: 100, ethanol: 85 },
};

const OCTANE_KEY = /^fuel:octane_(\d+)$/;
/** Petrol without a named blend may hold this much ethanol, percent (E10 is the usual most, from memory). */
const UNNAMED_ETHANOL = 10;

function gradeOf(key: string): Grade | null {
  const octane = OCTANE_KEY.exec(key)?.[1];
  if (octane !== undefined) return { octane: Number(octane), ethanol: null };
  return NAMED_GRADES[key] ?? null;
}

export type GradeVerdict = 'suits' | 'grade-below-engine' | 'blend-beyond-engine' | 'grade-not-stated';

/** Whether an engine takes what a tag names; what nothing is told of suits. */
export function gradeVerdict(key: string, engine: EngineNeeds): GradeVerdict {
  if (key === 'fuel:biodiesel') {
    return (engine.biodieselPercent ?? 100) >= 100 ? 'suits' : 'blend-beyond-engine';
  }
  const grade = gradeOf(key);
  if (grade === null) return 'suits';
  const { octane = 0, ethanolPercent = 100 } = engine;
  if (grade.octane !== null && grade.octane < octane) return 'grade-below-engine';
  if (grade.ethanol !== null && grade.ethanol > ethanolPercent) return 'blend-beyond-engine';
  const octaneOpen = grade.octane === null && octane > 0;
  const ethanolOpen = grade.ethanol === null && ethanolPercent < UNNAMED_ETHANOL;
  return octaneOpen || ethanolOpen ? 'grade-not-stated' : 'suits';
}

/** Tags of other kinds that this engine can burn as well: a flexible one takes E85, some take pure biodiesel. */
export function furtherKeys(fuelKind: string, engine: EngineNeeds): string[] {
  if (fuelKind === 'petrol' && (engine.ethanolPercent ?? 0) >= 85) return ['fuel:e85'];
  return fuelKind === 'diesel' && engine.biodieselPercent === 100 ? ['fuel:biodiesel'] : [];
}
