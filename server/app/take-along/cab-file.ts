import type { Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import { type CabStore, cabTank } from '../../core/cab/aboard.ts';
import type { CabContact, CabFile, CabSupply } from '../../core/cab/cab-file.ts';
import type { CabBasis, CabRuns } from '../../core/cab/cab-runs.ts';
import { packRuns } from '../../core/cab/packed-runs.ts';
import { routeSketch } from '../../core/cab/route-sketch.ts';
import type { PlaceName } from '../../core/phrases/said/supply-kinds.ts';
import type { GaugeRun } from '../../core/plan/gauge/gauge-run.ts';
import { byCommodity } from '../../core/plan/side/other-of.ts';
import type { PlanEdge } from '../../core/plan/side/plan-edge.ts';
import { COMMODITIES } from '../../core/quantity/commodities.ts';
import { language } from '../../words/parts/language.ts';
import { readerUnits } from '../../words/parts/reader-units.ts';
import { printed } from '../../words/printed.ts';
import { textOf } from '../../words/words-of.ts';
import type { ExportPack } from '../export/pack.ts';
import { cabMarks } from './cab-marks.ts';

const M_PER_KM = 1000;

/** All that the cab view of a trip knows. */
export function cabFileOf(pack: ExportPack, cab: CabBasis): CabFile {
  const { planned, route, made } = pack;
  const { analysis, plan } = planned;
  return {
    reader: { language: language(), units: readerUnits() },
    key: [made, route.name, route.lengthM, analysis.trip.departure ?? ''].join(' '),
    route: route.name,
    notice: pack.notice,
    lengthM: route.lengthM,
    fuelKind: analysis.rig.fuel.kind,
    plan: plan.status,
    basis: { ...cab, runs: packRuns(namedRuns(cab.runs)) },
    sketch: routeSketch(route),
    stores: byCommodity((commodity) => storeOf(analysis.rig, commodity, cab)),
    contacts: contactsOf(pack),
    marks: cabMarks(pack),
    others: othersOf(pack, cab.runs),
    helpHours: analysis.trip.helpHours ?? null,
  };
}

/** Places by the words that stand for them. */
const namedRuns = (runs: CabRuns): CabRuns =>
  byCommodity((commodity) => ({
    planned: runs[commodity].planned.map(namedRun),
    over: runs[commodity].over.map(({ id, run }) => ({ id, run: namedRun(run) })),
  }));

const namedRun = (run: GaugeRun): GaugeRun => ({ ...run, from: namedEdge(run.from), to: namedEdge(run.to) });

const namedEdge = (edge: PlanEdge): PlanEdge => ({ ...edge, name: nameOf(edge.name, edge.kind) });

function nameOf(name: PlaceName | null, kind: PlanEdge['kind']): string {
  if (name === null) return printed().lines.unnamedPlaces[kind];
  return typeof name === 'string' ? name : textOf(name);
}

function storeOf(rig: RigFile, commodity: Commodity, cab: CabBasis): CabStore {
  const { tanks, cans } = rig[commodity];
  const { runs, canL } = cab;
  const fullest = runs[commodity].planned.reduce((most, { departL }) => Math.max(most, departL), 0);
  return {
    tanks: tanks.map(cabTank),
    canL: canL[commodity],
    cans: Math.max(cans?.owned ?? 0, Math.ceil(fullest / canL[commodity])),
  };
}

/** Of the halts of the plan, and of what is to be asked before leaving. */
function contactsOf({ planned: { plan, whatIf } }: ExportPack): Record<string, CabContact> {
  const contacts = new Map<string, CabContact>();
  for (const { id, phone, openingHours } of whatIf.callFirst) contacts.set(id, { phone, openingHours });
  for (const halt of plan.sheet)
    for (const commodity of COMMODITIES) {
      const { at, contact } = halt[commodity] ?? {};
      if (at?.id == null || contact == null) continue;
      contacts.set(at.id, { phone: contact.phone, openingHours: contact.openingHours });
    }
  return Object.fromEntries(contacts);
}

/** Supplies that count and that no run begins or ends at, in the order of the road. */
function othersOf({ planned: { analysis } }: ExportPack, runs: CabRuns): CabSupply[] {
  const used = new Set(
    COMMODITIES.flatMap((each) => runs[each].planned.map(({ to: { id, atM } }) => placeKey(each, id, atM))),
  );
  return analysis.passings
    .filter(
      ({ counts, commodity, id, atKm }) => counts && !used.has(placeKey(commodity, id, atKm * M_PER_KM)),
    )
    .map(({ commodity, name, kind, atKm, detourKm, evidence }) => ({
      commodity,
      atM: atKm * M_PER_KM,
      name: name ?? kind,
      detourM: detourKm * M_PER_KM,
      evidence,
    }));
}

/** To a metre: kilometres of an answer are no whole metres again. */
const placeKey = (commodity: Commodity, id: string | null, atM: number): string =>
  `${commodity} ${id} ${Math.round(atM)}`;
