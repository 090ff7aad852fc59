import type { Analysis } from '../../contract/analysis.ts';
import type { Comparison } from '../../contract/answers/compare.ts';
import type { Caution as CautionTold } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import type { Outcome } from '../../core/input/problem.ts';
import type { Caution } from '../../core/phrases/cautions.ts';
import { noticeWords } from '../../words/notice.ts';
import { analyseTrip, type Calendar } from '../analyse-trip.ts';
import type { LoadedTrip } from '../loaded-trip.ts';
import { toContract } from '../to-contract.ts';
import { compareRow } from './compare-row.ts';

/** A rig to compare, and what to call it when it has no name of its own. */
export interface NamedRig {
  rig: RigFile;
  fallback: string;
}

/** Rigs to compare, and the trip that all of them make. */
export interface RigsAndTrip {
  rigs: readonly NamedRig[];
  trip: TripFile;
}

/** Several rigs on one loaded route, each analysed as it would be alone; all of them checked, the trip against each. */
export function compareRigs(
  loaded: LoadedTrip,
  { rigs, trip }: RigsAndTrip,
  calendar: Calendar,
): Outcome<Comparison> {
  const rows: { name: string; analysis: Analysis }[] = [];
  for (const { name, rig } of withNames(rigs)) {
    const outcome = analyseTrip(loaded, { rig, trip }, calendar);
    if (!outcome.ok) return outcome;
    rows.push({ name, analysis: outcome.value.analysis });
  }
  const [first] = rows;
  if (first === undefined) throw new Error('a comparison of no rig was not refused');
  const { route, extracts, standing } = first.analysis;
  const common = sharedCautions(rows.map((row) => row.analysis.cautions));
  const commonKeys = new Set(common.map(keyOf));
  return {
    ok: true,
    value: {
      route: { name: route.name, lengthKm: route.lengthKm },
      notice: noticeWords(loaded.notice),
      extracts,
      rigs: rows.map(({ name, analysis }) => ({
        ...compareRow(name, analysis),
        cautions: analysis.cautions.filter((caution) => !commonKeys.has(keyOf(caution))),
      })),
      cautions: [...toContract(ownCautions(rigs, trip)), ...common],
      standing,
    },
  };
}

/** Each rig by its own name; rigs of one name are numbered. */
function withNames(rigs: readonly NamedRig[]): { name: string; rig: RigFile }[] {
  const taken = new Set<string>();
  return rigs.map(({ rig, fallback }) => {
    const plain = rig.name ?? fallback;
    let name = plain;
    for (let number = 2; taken.has(name); number += 1) name = `${plain} (${number})`;
    taken.add(name);
    return { name, rig };
  });
}

const keyOf = (caution: CautionTold): string =>
  JSON.stringify([caution.code, caution.text, caution.fromKm ?? null, caution.toKm ?? null]);

/** The cautions of the first that all the others have too. */
function sharedCautions(lists: readonly (readonly CautionTold[])[]): CautionTold[] {
  const [first = [], ...others] = lists;
  const keys = others.map((list) => new Set(list.map(keyOf)));
  return first.filter((caution) => keys.every((known) => known.has(keyOf(caution))));
}

/** What makes rigs unlike to compare. */
function ownCautions(rigs: readonly NamedRig[], { aboard }: TripFile): Caution[] {
  const cautions: Caution[] = [];
  if (rigs.length > 1 && (aboard?.fuelLitres !== undefined || aboard?.waterLitres !== undefined)) {
    cautions.push({ code: 'aboard-for-all', facts: {} });
  }
  const kinds = [...new Set(rigs.map(({ rig }) => rig.fuel.kind))];
  if (kinds.length > 1) cautions.push({ code: 'fuels-differ', facts: { kinds } });
  return cautions;
}
