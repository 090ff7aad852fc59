import type { Caution, Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { sketchyM } from '../../gaps/course.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { HeldPlan } from '../drive/drive-actual.ts';
import type { CarryProblem } from '../question/problem.ts';

/** What the plan rests on that nobody knows for sure. */
export function restsOn({ problem, driven, choice }: HeldPlan): Caution[] {
  const cautions = waysLeftOut(choice.complete, problem);
  for (const commodity of COMMODITIES) {
    const { course } = problem.sides[commodity];
    for (const [index, { from, to, cans, figures }] of driven[commodity].entries()) {
      const next = driven[commodity][index + 1];
      const tooMuchL = next === undefined ? 0 : figures.arriveL - next.figures.departL;
      if (tooMuchL > 1e-6) {
        const text = `${Math.ceil(tooMuchL * 10) / 10} l of ${commodity} have to be let go here: with all of it and the other supplies filled, a permitted mass is broken.`;
        cautions.push({ code: 'plan-lets-go', text, fromKm: to.atM / 1000, toKm: to.atM / 1000 });
      }
      const place = { fromKm: from.atM / 1000, toKm: to.atM / 1000 };
      if (figures.acrossNoData) {
        const text = `No extract shows ${commodity} on part of this stretch: the plan takes it as dry.`;
        cautions.push({ code: 'plan-across-no-data', text, ...place });
      }
      if (sketchyM(course, from.atM, to.atM) > 0) {
        const text = `Part of this stretch is a straight line where a road is meant: the ${commodity} it takes is a guess.`;
        cautions.push({ code: 'plan-across-sketch', text, ...place });
      }
      if (from.kind === 'start' && cans > 0) {
        const text = `${cans} ${commodity} ${cans === 1 ? 'can is' : 'cans are'} to be filled before the start.`;
        cautions.push({ code: 'plan-cans-at-start', text, fromKm: 0, toKm: 0 });
      }
      if (to.opensInHours !== undefined) {
        const text = `Up to ${Math.ceil(to.opensInHours * 10) / 10} h of waiting for ${to.name ?? to.id ?? 'a supply'} to open are reckoned with, by its mapped hours. Ask, and say how long the wait is.`;
        cautions.push({ code: 'plan-waits-for-opening', text, fromKm: place.toKm, toKm: place.toKm });
      }
      if (to.evidence === 'implied' || to.evidence === 'doubtful') {
        const text = `${to.name ?? to.id ?? 'A supply'} is known only as ${to.evidence}: telephone before you depend on it.`;
        cautions.push({ code: 'plan-weak-evidence', text, fromKm: place.toKm, toKm: place.toKm });
      }
    }
    if (course.onward === null) {
      const endKm = course.lengthM / 1000;
      const text = `How far the next ${commodity} is past the end was not told: the plan reaches to the end of the route and no farther.`;
      cautions.push({ code: 'plan-onward-unknown', text, fromKm: endKm, toKm: endKm });
    }
  }
  return cautions;
}

/** That not all ways over supplies which give little were looked at; supplies left out are told elsewhere. */
export function waysLeftOut(complete: boolean, { thinned }: CarryProblem): Caution[] {
  if (complete || thinned === true) return [];
  const text =
    'There are very many ways over the supplies that do not give all that is wanted: only those with most aboard for least were looked at. Another may be better.';
  return [{ code: 'plan-ways-left-out', text }];
}

/** Cans beyond the owned ones, by commodity. */
export function cansToGet(rig: RigFile, cans: Record<Commodity, number>): Record<Commodity, number> {
  const beyond = (commodity: Commodity) => Math.max(0, cans[commodity] - ownedCans(rig, commodity));
  return { fuel: beyond('fuel'), water: beyond('water') };
}

/** That cans are to be got before the plan is one. */
export function cansToGetCautions(rig: RigFile, getCans: Record<Commodity, number>): Caution[] {
  return COMMODITIES.filter((commodity) => getCans[commodity] > 0).map((commodity): Caution => {
    const count = getCans[commodity];
    const owned = ownedCans(rig, commodity);
    const got = `${count} more ${commodity} ${count === 1 ? 'can is' : 'cans are'} to be got`;
    const text = `${got}: ${owned === 0 ? 'none is' : owned === 1 ? '1 is' : `${owned} are`} owned.`;
    return { code: 'plan-cans-to-get', text };
  });
}

const ownedCans = (rig: RigFile, commodity: Commodity): number => rig[commodity].cans?.owned ?? 0;
