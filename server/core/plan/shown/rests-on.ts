import type { Commodity } from '../../../contract/common.ts';
import { type Course, sketchyM } from '../../gaps/course/course.ts';
import { staysNight } from '../../gaps/course/standing.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { DrivenLeg } from '../drive/drive.ts';
import type { DrivenPlan } from '../drive/driven-plan.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { CarrySide } from '../side/carry-side.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';

/** Less than this is float noise and nothing to let go, litres. */
const NOISE_L = 1e-6;

/** What the plan rests on that nobody knows for sure. */
export function restsOn({ question, legs, choice }: DrivenPlan): Caution[] {
  return [
    ...waysLeftOut(choice.complete, question),
    ...COMMODITIES.flatMap((commodity) => [
      ...legs[commodity].flatMap((leg, index) => [
        ...letGoAt(commodity, leg, legs[commodity][index + 1]),
        ...onTheWay(question.sides[commodity], leg),
        ...atTheEnd(leg),
      ]),
      ...pastTheEnd(question.sides[commodity]),
    ]),
  ];
}

function letGoAt(commodity: Commodity, { to, figures }: DrivenLeg, next: DrivenLeg | undefined): Caution[] {
  const litres = next === undefined ? 0 : figures.arriveL - next.figures.departL;
  return litres > NOISE_L ? [{ code: 'plan-lets-go', facts: { commodity, litres }, ...at(to.atM) }] : [];
}

function onTheWay({ commodity, course }: CarrySide, { from, to, cans, figures }: DrivenLeg): Caution[] {
  const facts = { commodity };
  const stretch = { fromM: from.atM, toM: to.atM };
  const cautions: Caution[] = [];
  if (figures.acrossNoData) cautions.push({ code: 'plan-across-no-data', facts, ...stretch });
  if (sketchyM(course, from.atM, to.atM) > 0)
    cautions.push({ code: 'plan-across-sketch', facts, ...stretch });
  cautions.push(...nightAt(course, from));
  if (from.kind === 'start' && cans > 0)
    cautions.push({ code: 'plan-cans-at-start', facts: { commodity, cans }, ...at(0) });
  return cautions;
}

/** Waters of a plan at which the night is spent. */
export const nightsAtSupplies = ({ question: { sides }, legs }: DrivenPlan): Caution[] =>
  COMMODITIES.flatMap((commodity) =>
    legs[commodity].flatMap(({ from }) => nightAt(sides[commodity].course, from)),
  );

const nightAt = (course: Course, from: SupplyEdge): Caution[] =>
  staysNight(course, from)
    ? [{ code: 'plan-night-at-supply', facts: { name: from.name ?? from.id }, ...at(from.atM) }]
    : [];

/** What is not sure of the supply that a leg leads to. */
function atTheEnd({ to, endsAtTopUp }: DrivenLeg): Caution[] {
  if (endsAtTopUp) return [];
  const name = to.name ?? to.id;
  const { evidence, opensInHours } = to;
  const cautions: Caution[] = [];
  if (opensInHours !== undefined)
    cautions.push({ code: 'plan-waits-for-opening', facts: { name, hours: opensInHours }, ...at(to.atM) });
  if (evidence === 'implied' || evidence === 'doubtful')
    cautions.push({ code: 'plan-weak-evidence', facts: { name, evidence }, ...at(to.atM) });
  return cautions;
}

const pastTheEnd = ({ commodity, course }: CarrySide): Caution[] =>
  course.onward === null
    ? [{ code: 'plan-onward-unknown', facts: { commodity }, ...at(course.lengthM) }]
    : [];

const at = (atM: number) => ({ fromM: atM, toM: atM });

/** That not all ways over supplies which give little were looked at; supplies left out are told elsewhere. */
export const waysLeftOut = (complete: boolean, { suppliesLeftOut }: CarryQuestion): Caution[] =>
  complete || suppliesLeftOut === true ? [] : [{ code: 'plan-ways-left-out', facts: {} }];
