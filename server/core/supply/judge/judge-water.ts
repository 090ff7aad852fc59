import type { WaterClass } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import { contentsOf } from '../tags/contents.ts';
import { ANY_WITH_WATER, type WaterKindRule } from '../tags/kinds.ts';
import { isTagged, isTaggedNotNo, type KnownValue, tagValue } from '../tags/vocabulary.ts';
import { Judgement, tagged } from './judgement.ts';

const FITNESS: Record<WaterClass, number> = { drinking: 3, treatable: 2, washing: 1, none: 0 };

/** The less fit of two classes. */
export const lessFit = (a: WaterClass, b: WaterClass): WaterClass => (FITNESS[a] <= FITNESS[b] ? a : b);

/** Values of `drinking_water` that say it is fit; when it is there is the season's matter. */
const PLAIN_WORDS: readonly string[] = ['yes', 'seasonal'] satisfies KnownValue<'drinking_water'>[];

/** Kinds of which `drinking_water=*` may say what the water is like, and not that it can be drawn. */
const SPEAKS_OF_CONTENTS = [ANY_WITH_WATER.key, 'man_made=reservoir_covered'];

export interface WaterJudgement {
  judgement: Judgement;
  waterClass: WaterClass;
}

/** What an object of a kind gives when its tags say nothing of drinking water, or only that no authority looks after it. */
function fromKind(rule: WaterKindRule, tags: Tags): WaterJudgement {
  const judgement = new Judgement(rule.evidence);
  if (rule.reason !== undefined) judgement.add(rule.reason, {});
  let waterClass = rule.waterClass;
  if (isTagged(tags, 'drinking_water:legal', 'no')) {
    judgement.add('not-controlled', tagged(tags, 'drinking_water:legal'));
    waterClass = lessFit(waterClass, 'treatable');
  }
  return { judgement, waterClass };
}

/** The tags say outright that it is not drinking water. */
function unfit(rule: WaterKindRule, tags: Tags): WaterJudgement {
  const waterClass = lessFit(rule.waterClass, 'washing');
  const judgement = new Judgement(rule.evidence);
  const contradicts = rule.waterClass === 'drinking' || isTagged(tags, 'drinking_water:legal', 'yes');
  if (contradicts)
    judgement.against('tags-contradict', { tags: [rule.key, ...tagged(tags, 'drinking_water').tags] });
  else judgement.add('not-fit', tagged(tags, 'drinking_water'));
  if (rule.reason !== undefined && rule.reason !== 'not-stated-fit') judgement.add(rule.reason, {});
  return { judgement, waterClass };
}

/**
 * The tags say that it is drinking water, plainly or in some way. `drinking_water:legal=yes` alone says so too: it is
 * declared drinkable by an authority (from memory; the key is not in the tagging schema).
 */
function stated(rule: WaterKindRule, tags: Tags): WaterJudgement {
  const judgement = new Judgement('stated');
  let waterClass: WaterClass = 'drinking';
  if (rule.sticks === true && rule.reason !== undefined) judgement.against(rule.reason, {});
  const value = tagValue(tags, 'drinking_water');
  if (isTagged(tags, 'drinking_water', 'untreated')) {
    judgement.add('untreated', tagged(tags, 'drinking_water'));
    waterClass = 'treatable';
  } else if (isTagged(tags, 'drinking_water', 'conditional')) {
    judgement.against('fit-on-condition', tagged(tags, 'drinking_water'));
    waterClass = 'treatable';
  } else if (value !== undefined && !PLAIN_WORDS.includes(value)) {
    judgement.against('fit-unclear', tagged(tags, 'drinking_water'));
    // Nothing in such a value makes a trough better than a trough.
    waterClass = lessFit(rule.waterClass, 'treatable');
  }
  if (isTagged(tags, 'drinking_water:legal', 'no')) {
    judgement.add('not-controlled', tagged(tags, 'drinking_water:legal'));
    waterClass = lessFit(waterClass, 'treatable');
  }
  return { judgement, waterClass };
}

/** What kind and tags say about water: how well it is known to be there, and what it is fit for. */
export function judgeWater(rule: WaterKindRule, tags: Tags, ropeAndBucket: boolean): WaterJudgement {
  const declared =
    tagValue(tags, 'drinking_water') !== undefined || isTagged(tags, 'drinking_water:legal', 'yes');
  const judged = isTagged(tags, 'drinking_water', 'no')
    ? unfit(rule, tags)
    : declared
      ? stated(rule, tags)
      : fromKind(rule, tags);
  const { judgement } = judged;
  const holds = declared && SPEAKS_OF_CONTENTS.includes(rule.key) ? contentsOf(tags) : null;
  if (holds !== null && !isTagged(tags, 'drinking_water', 'no')) {
    judgement.against('use-unknown', {});
    judged.waterClass = lessFit(judged.waterClass, 'treatable');
  }
  if (isTagged(tags, 'salt', 'yes')) {
    judgement.against('salty', tagged(tags, 'salt'));
    judged.waterClass = lessFit(judged.waterClass, 'washing');
  }
  if (isTaggedNotNo(tags, 'intermittent')) {
    judgement.against('may-be-dry', tagged(tags, 'intermittent'));
  }
  if (isTagged(tags, 'pump', 'no') && !ropeAndBucket) judgement.add('no-pump', tagged(tags, 'pump'));
  if (isTagged(tags, 'pump', 'powered')) judgement.add('powered-pump', tagged(tags, 'pump'));
  if (isTagged(tags, 'bottle', 'no')) judgement.against('hard-to-fill', tagged(tags, 'bottle'));
  return judged;
}
