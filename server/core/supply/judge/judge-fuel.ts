import type { FuelKind } from '../../../contract/rig.ts';
import type { Tags } from '../../input/sources.ts';
import type { TagReasonCode } from '../../phrases/supply.ts';
import { type FuelKindRule, prefixOf } from '../tags/kinds.ts';
import { effectOf } from '../tags/reasons.ts';
import { type EngineNeeds, furtherKeys, gradeVerdict } from './engine-needs.ts';
import { FUEL_RULES, type FuelRule, NOT_A_FUEL } from './fuels.ts';
import { Judgement, tagged } from './judgement.ts';

/** What the tags of a station say of one fuel: the keys that name it, and those of its near kin that are sold. */
interface Offer {
  readonly sold: readonly string[];
  readonly refused: readonly string[];
  /** Keys whose fuel the tags name as sold in former times: "disused:fuel:diesel=yes". */
  readonly former: readonly string[];
  readonly unclear: readonly string[];
  readonly kin: readonly (readonly [key: string, code: TagReasonCode])[];
}

function offerOf(fuel: FuelRule, tags: Tags, further: readonly string[]): Offer {
  const own = fuelKeys(fuel, tags);
  const names = new Set([...own, ...Object.keys(fuel.kin)]);
  const former = Object.keys(tags).filter((key) => {
    const [prefix, bare] = prefixOf(key);
    return prefix !== null && names.has(bare) && tags[key] !== 'no';
  });
  const isFormer = (key: string) => former.some((one) => one.endsWith(`:${key}`));
  const sold = [...own, ...further].filter((key) => tags[key] === 'yes' && !isFormer(key));
  return {
    sold,
    former,
    refused: own.filter((key) => tags[key] === 'no'),
    unclear: own.filter((key) => tags[key] !== undefined && !/^(yes|no)$/.test(tags[key])),
    kin: Object.entries(fuel.kin).filter(
      ([key]) => tags[key] === 'yes' && !sold.includes(key) && !isFormer(key),
    ),
  };
}

/** The keys of the fuel, and those of the object that name a grade of it which the table does not list. */
const fuelKeys = (fuel: FuelRule, tags: Tags): string[] => [
  ...fuel.keys,
  ...Object.keys(tags).filter((key) => fuel.grades?.test(key) && !fuel.keys.includes(key)),
];

/**
 * What kind and tags say about fuel for a rig that burns `fuelKind`, in an engine with these needs: whether this
 * station sells it.
 */
export function judgeFuel(
  rule: FuelKindRule,
  tags: Tags,
  fuelKind: FuelKind,
  engine: EngineNeeds = {},
): Judgement {
  const fuel = FUEL_RULES[fuelKind];
  const offer = offerOf(fuel, tags, furtherKeys(fuelKind, engine));
  const { sold, refused, former, unclear, kin } = offer;
  if (rule.sticks === true) {
    const judgement = new Judgement('doubtful');
    if (rule.reason !== undefined) judgement.against(rule.reason, {});
    if (refused.length > 0 && sold.length === 0) judgement.against('fuel-not-sold', tagged(tags, ...refused));
    return judgement;
  }
  if (sold.length > 0) return judgeSold(fuel, sold, tags, engine);
  if (former.length > 0) return doubtful('out-of-use', tags, former);
  if (unclear.length > 0) return doubtful('fuel-unclear', tags, unclear);
  const beyond = kin.map(([key]) => key).filter((key) => gradeVerdict(key, engine) !== 'suits');
  if (beyond.length > 0 && beyond.length === kin.length) return doubtful('blend-beyond-engine', tags, beyond);
  if (kin.length > 0) return judgeKin(offer, tags);
  if (refused.length > 0) {
    return doubtful(fuel.keys.length === 1 ? 'fuel-not-sold' : 'grade-not-sold', tags, refused);
  }
  return judgeUnnamed(rule, fuelKind, tags);
}

function doubtful(code: TagReasonCode, tags: Tags, keys: readonly string[]): Judgement {
  const judgement = new Judgement('doubtful');
  judgement.against(code, tagged(tags, ...keys));
  return judgement;
}

/** The fuel is sold; which grades of it may matter to the engine. */
function judgeSold(fuel: FuelRule, sold: readonly string[], tags: Tags, engine: EngineNeeds): Judgement {
  if (sold.some((key) => gradeVerdict(key, engine) !== 'suits')) return judgeGrades(sold, tags, engine);
  const judgement = new Judgement('stated');
  for (const { keys, code } of fuel.onlyThese) {
    if (answeredByEngine(code, engine)) continue;
    if (sold.every((key) => keys.includes(key))) judgement.add(code, tagged(tags, ...sold));
  }
  return judgement;
}

/** Near kin of the fuel is sold. Where the plain fuel is refused, that is all there is, and the rig may not take it. */
function judgeKin({ kin, refused }: Offer, tags: Tags): Judgement {
  const judgement = new Judgement(refused.length > 0 ? 'doubtful' : 'stated');
  for (const [key, code] of kin) judgement.add(code, tagged(tags, key));
  if (kin.every(([, code]) => effectOf(code) === 'weakens')) judgement.evidence = 'doubtful';
  if (refused.length > 0) {
    judgement.against('fuel-may-not-suit', tagged(tags, ...refused, ...kin.map(([key]) => key)));
  }
  return judgement;
}

/** Nothing is said of the fuel, perhaps of others. */
function judgeUnnamed(rule: FuelKindRule, fuelKind: FuelKind, tags: Tags): Judgement {
  const fuel = FUEL_RULES[fuelKind];
  const others = Object.keys(tags).filter(
    (key) => key.startsWith('fuel:') && tags[key] !== 'no' && !NOT_A_FUEL.includes(key) && !(key in fuel.kin),
  );
  const judgement = new Judgement(rule.evidence);
  if (others.length > 0) judgement.against('other-fuels-listed', tagged(tags, ...others));
  if (!fuel.impliedByStation) judgement.against('never-implied', { fuel: fuelKind });
  if (rule.reason !== undefined) judgement.against(rule.reason, {});
  return judgement;
}

/** A grade that the engine takes makes the station count; one that may suit leaves it implied; else it does not count. */
function judgeGrades(sold: readonly string[], tags: Tags, engine: EngineNeeds): Judgement {
  const those = (verdict: ReturnType<typeof gradeVerdict>) =>
    sold.filter((key) => gradeVerdict(key, engine) === verdict);
  if (those('suits').length > 0) return new Judgement('stated');
  const open = those('grade-not-stated');
  if (open.length > 0) {
    const judgement = new Judgement('implied');
    judgement.add('grade-not-stated', tagged(tags, ...open));
    return judgement;
  }
  const judgement = new Judgement('doubtful');
  for (const code of ['grade-below-engine', 'blend-beyond-engine'] as const) {
    const keys = those(code);
    if (keys.length > 0) judgement.against(code, tagged(tags, ...keys));
  }
  return judgement;
}

/** Advice to look up what the engine takes is not given to somebody who told it. */
const answeredByEngine = (code: TagReasonCode, engine: EngineNeeds): boolean =>
  (code === 'low-octane' && engine.octane !== undefined) ||
  (code === 'ethanol-blend' && engine.ethanolPercent !== undefined);
