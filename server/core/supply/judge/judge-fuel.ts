import type { FuelKind } from '../../../contract/rig.ts';
import type { Tags } from '../../input/sources.ts';
import type { FuelKindRule } from '../tags/kinds.ts';
import { effectOf, type ReasonCode } from '../tags/reasons.ts';
import { type EngineNeeds, furtherKeys, gradeVerdict } from './engine-needs.ts';
import { FUEL_RULES, NOT_A_FUEL } from './fuels.ts';
import { asTag, Judgement } from './judgement.ts';

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
  const sold = [...fuel.keys, ...furtherKeys(fuelKind, engine)].filter((key) => tags[key] === 'yes');
  const refused = fuel.keys.filter((key) => tags[key] === 'no');
  const unclear = fuel.keys.filter((key) => tags[key] !== undefined && !/^(yes|no)$/.test(tags[key]));
  const kin = Object.keys(fuel.kin).filter((key) => tags[key] === 'yes' && !sold.includes(key));
  const list = (keys: readonly string[]) => keys.map((key) => asTag(tags, key)).join(', ');

  if (rule.sticks === true) {
    const judgement = new Judgement('doubtful');
    if (rule.reason !== undefined) judgement.against(rule.reason);
    if (refused.length > 0 && sold.length === 0) judgement.against('fuel-not-sold', list(refused));
    return judgement;
  }
  if (sold.length > 0) {
    if (sold.some((key) => gradeVerdict(key, engine) !== 'suits')) return judgeGrades(sold, tags, engine);
    const judgement = new Judgement('stated');
    for (const { keys, code } of fuel.onlyThese) {
      if (answeredByEngine(code, engine)) continue;
      if (sold.every((key) => keys.includes(key))) judgement.add(code, list(sold));
    }
    return judgement;
  }
  if (unclear.length > 0) {
    const judgement = new Judgement('doubtful');
    judgement.against('fuel-unclear', list(unclear));
    return judgement;
  }
  const beyond = kin.filter((key) => gradeVerdict(key, engine) !== 'suits');
  if (beyond.length > 0 && beyond.length === kin.length) {
    const judgement = new Judgement('doubtful');
    judgement.against('blend-beyond-engine', list(beyond));
    return judgement;
  }
  if (kin.length > 0) {
    // The plain fuel is refused: what is left is the kin, which the rig may or may not take.
    const judgement = new Judgement(refused.length > 0 ? 'doubtful' : 'stated');
    for (const key of kin) {
      const code = fuel.kin[key]!;
      judgement.add(code, asTag(tags, key));
    }
    if (kin.every((key) => effectOf(fuel.kin[key]!) === 'weakens')) judgement.evidence = 'doubtful';
    if (refused.length > 0) judgement.against('fuel-may-not-suit', list([...refused, ...kin]));
    return judgement;
  }
  if (refused.length > 0) {
    const judgement = new Judgement('doubtful');
    judgement.against(fuel.keys.length === 1 ? 'fuel-not-sold' : 'grade-not-sold', list(refused));
    return judgement;
  }
  const others = Object.keys(tags).filter(
    (key) => key.startsWith('fuel:') && tags[key] !== 'no' && !NOT_A_FUEL.includes(key) && !(key in fuel.kin),
  );
  const judgement = new Judgement(rule.evidence);
  if (others.length > 0) judgement.against('other-fuels-listed', list(others));
  if (!fuel.impliedByStation) judgement.against('never-implied', fuel.label);
  if (rule.reason !== undefined) judgement.against(rule.reason);
  return judgement;
}

/** A grade that the engine takes makes the station count; one that may suit leaves it implied; else it does not count. */
function judgeGrades(sold: readonly string[], tags: Tags, engine: EngineNeeds): Judgement {
  const those = (verdict: ReturnType<typeof gradeVerdict>) =>
    sold
      .filter((key) => gradeVerdict(key, engine) === verdict)
      .map((key) => asTag(tags, key))
      .join(', ');
  if (those('suits') !== '') return new Judgement('stated');
  if (those('grade-not-stated') !== '') {
    const judgement = new Judgement('implied');
    judgement.add('grade-not-stated', those('grade-not-stated'));
    return judgement;
  }
  const judgement = new Judgement('doubtful');
  for (const code of ['grade-below-engine', 'blend-beyond-engine'] as const) {
    if (those(code) !== '') judgement.against(code, those(code));
  }
  return judgement;
}

/** Advice to look up what the engine takes is not given to somebody who told it. */
const answeredByEngine = (code: ReasonCode, engine: EngineNeeds): boolean =>
  (code === 'low-octane' && engine.octane !== undefined) ||
  (code === 'ethanol-blend' && engine.ethanolPercent !== undefined);
