import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { sketchyM } from '../../gaps/course.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { DrivenLeg } from '../drive/drive.ts';
import type { HeldPlan } from '../drive/drive-actual.ts';
import type { CarryProblem, CarrySide } from '../question/problem.ts';

/** Less than this is float noise and nothing to let go, litres. */
const NOISE_L = 1e-6;

/** What the plan rests on that nobody knows for sure. */
export function restsOn({ problem, driven, choice }: HeldPlan): CodedCaution[] {
  return [
    ...waysLeftOut(choice.complete, problem),
    ...COMMODITIES.flatMap((commodity) => [
      ...driven[commodity].flatMap((leg, index) => [
        ...letGoAt(commodity, leg, driven[commodity][index + 1]),
        ...onTheWay(problem.sides[commodity], leg),
        ...atTheEnd(leg),
      ]),
      ...pastTheEnd(problem.sides[commodity]),
    ]),
  ];
}

function letGoAt(
  commodity: Commodity,
  { to, figures }: DrivenLeg,
  next: DrivenLeg | undefined,
): CodedCaution[] {
  const litres = next === undefined ? 0 : figures.arriveL - next.figures.departL;
  return litres > NOISE_L ? [{ code: 'plan-lets-go', facts: { commodity, litres }, ...at(to.atM) }] : [];
}

function onTheWay({ commodity, course }: CarrySide, { from, to, cans, figures }: DrivenLeg): CodedCaution[] {
  const facts = { commodity };
  const stretch = { fromM: from.atM, toM: to.atM };
  const cautions: CodedCaution[] = [];
  if (figures.acrossNoData) cautions.push({ code: 'plan-across-no-data', facts, ...stretch });
  if (sketchyM(course, from.atM, to.atM) > 0)
    cautions.push({ code: 'plan-across-sketch', facts, ...stretch });
  if (from.kind === 'start' && cans > 0)
    cautions.push({ code: 'plan-cans-at-start', facts: { commodity, cans }, ...at(0) });
  return cautions;
}

/** What is not sure of the supply that a leg leads to. */
function atTheEnd({ to }: DrivenLeg): CodedCaution[] {
  const name = to.name ?? to.id;
  const { evidence, opensInHours } = to;
  const cautions: CodedCaution[] = [];
  if (opensInHours !== undefined)
    cautions.push({ code: 'plan-waits-for-opening', facts: { name, hours: opensInHours }, ...at(to.atM) });
  if (evidence === 'implied' || evidence === 'doubtful')
    cautions.push({ code: 'plan-weak-evidence', facts: { name, evidence }, ...at(to.atM) });
  return cautions;
}

const pastTheEnd = ({ commodity, course }: CarrySide): CodedCaution[] =>
  course.onward === null
    ? [{ code: 'plan-onward-unknown', facts: { commodity }, ...at(course.lengthM) }]
    : [];

const at = (atM: number) => ({ fromM: atM, toM: atM });

/** That not all ways over supplies which give little were looked at; supplies left out are told elsewhere. */
export const waysLeftOut = (complete: boolean, { thinned }: CarryProblem): CodedCaution[] =>
  complete || thinned === true ? [] : [{ code: 'plan-ways-left-out', facts: {} }];

/** Cans beyond the owned ones, by commodity. */
export function cansToGet(rig: RigFile, cans: Record<Commodity, number>): Record<Commodity, number> {
  const beyond = (commodity: Commodity) => Math.max(0, cans[commodity] - ownedCans(rig, commodity));
  return { fuel: beyond('fuel'), water: beyond('water') };
}

/** That cans are to be got before the plan is one. */
export const cansToGetCautions = (rig: RigFile, getCans: Record<Commodity, number>): CodedCaution[] =>
  COMMODITIES.filter((commodity) => getCans[commodity] > 0).map((commodity) => ({
    code: 'plan-cans-to-get',
    facts: { commodity, cans: getCans[commodity], owned: ownedCans(rig, commodity) },
  }));

const ownedCans = (rig: RigFile, commodity: Commodity): number => rig[commodity].cans?.owned ?? 0;
