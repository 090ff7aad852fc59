import type { RigFile } from '../../server/contract/rig.ts';
import type { Course, Edge } from '../../server/core/gaps/course/course.ts';
import { type EvenCourseFacts, evenCourse } from '../../server/core/gaps/course/even-course.ts';
import { settleRig } from '../../server/core/rig/settle-rig.ts';

/** The rig of the design's worked example. */
export const EXAMPLE_RIG: RigFile = {
  name: 'Long-wheelbase wagon',
  fuel: {
    kind: 'diesel',
    litresPer100Km: { low: 14, typical: 15.5, high: 17 },
    tanks: [{ name: 'main', litres: 130, unusableLitres: 3 }],
    cans: { litres: 20, owned: 4 },
    reserve: { km: 100, shareOfNeed: 0 },
  },
  water: {
    litresPerDay: { low: 11, typical: 14, high: 18 },
    tanks: [{ name: 'under floor', litres: 70 }],
    cans: { litres: 20, owned: 2 },
    reserve: { days: 2 },
  },
  pace: { hoursPerDay: 7, kmPerHour: { slow: 35, typical: 45, fast: 60 } },
};

type CourseChanges = Partial<Omit<EvenCourseFacts, 'onward'>> & {
  rigFile?: RigFile;
  onward?: { km: number; hours: number } | null;
};

export function courseOf(changes: CourseChanges = {}): Course {
  const { rigFile, onward = { km: 0, hours: 0 }, ...course } = changes;
  return evenCourse({
    commodity: 'fuel',
    rig: settleRig(rigFile ?? EXAMPLE_RIG).rig,
    lengthM: 1_340_000,
    allowanceFactor: 1,
    sketchy: [],
    stays: [],
    oneWay: [],
    uncovered: [],
    onward: onward === null ? null : { m: onward.km * 1000, hours: onward.hours },
    ...course,
  });
}

export const startEdge: Edge = { kind: 'start', id: null, name: null, atM: 0, detourM: 0, evidence: null };
export const endEdge = (atM: number): Edge => ({ ...startEdge, kind: 'end', atM });
export const passingEdge = (atM: number, detourM = 0): Edge => ({
  kind: 'passing',
  id: `node/${Math.round(atM)}`,
  name: null,
  atM,
  detourM,
  evidence: 'stated',
});
