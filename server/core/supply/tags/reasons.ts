import type { Evidence, Reason } from '../../../contract/common.ts';

/**
 * What a reason does. `blocks`: the point does not count; a point counts exactly when none of its reasons blocks.
 * `weakens`: it lowers the evidence, and the level asked for decides. `advises`: good to know, the point counts as before.
 */
export type ReasonEffect = 'blocks' | 'weakens' | 'advises';

interface ReasonRule {
  effect: ReasonEffect;
  /**
   * True when a confirmation by the user answers it ("it was open, it gave water"). What a working supply does not
   * answer stays: whether the fuel is the right one, and whether the water is fit to drink.
   */
  answered: boolean;
  /** Says what is known, then what to do. `detail` is a tag, a date or a name. */
  text: (detail: string) => string;
}

const blocks = (text: ReasonRule['text']): ReasonRule => ({ effect: 'blocks', answered: false, text });
const blocksUntilConfirmed = (text: ReasonRule['text']): ReasonRule => ({
  effect: 'blocks',
  answered: true,
  text,
});
const weakens = (text: ReasonRule['text']): ReasonRule => ({ effect: 'weakens', answered: true, text });
const advises = (text: ReasonRule['text']): ReasonRule => ({ effect: 'advises', answered: true, text });

/** Every reason of a supply point, in the order in which they are listed. Codes are stable. */
export const REASON_RULES = {
  'reported-out': blocks((on) => `You reported on ${on} that it does not work. A newer report changes that`),
  'out-of-use': blocksUntilConfirmed(
    (tag) => `Mapped as out of use, gone or not yet built (${tag}): do not go for it`,
  ),
  closed: blocksUntilConfirmed((tag) => `Mapped as closed (${tag}): ask before you plan on it`),
  broken: blocksUntilConfirmed((tag) => `Mapped as broken or locked (${tag}): ask before you plan on it`),
  'not-public': blocksUntilConfirmed((tag) => `Not open to the public (${tag}): ask the owner first`),
  'permit-needed': blocksUntilConfirmed(
    (tag) => `Only with a permit (${tag}): get it, then confirm the point`,
  ),
  'out-of-season': blocksUntilConfirmed((detail) => `Out of season: ${detail}. Ask before you plan on it`),
  'no-pump': blocks((tag) => `No pump (${tag}): needs rope and bucket aboard`),
  'fuel-not-sold': blocks((tag) => `Does not sell your fuel (${tag})`),
  'grade-below-engine': blocks(
    (tags) => `Lists only petrol of a lower octane number than your engine needs (${tags})`,
  ),
  'blend-beyond-engine': blocks((tags) => `Lists only blends that your engine does not take (${tags})`),
  'for-aircraft': blocks(() => 'Fuel for aircraft, not for vehicles'),
  'for-boats': blocksUntilConfirmed(() => 'For boats: ask whether a vehicle can get there and is served'),
  'tags-contradict': blocks((tag) => `Its tags contradict each other (${tag}): take it as not fit to drink`),
  'for-fire-fighting': blocks(() => 'Kept for fire fighting: not a supply'),
  'for-animals': blocks(() => 'Water for animals, not for people'),
  decorative: blocks(() => 'A fountain is taken as decorative unless its tags say drinking water'),
  'not-fit': blocks((tag) => `Mapped as not fit to drink (${tag})`),
  salty: blocks((tag) => `Salt water (${tag}): no filter takes out salt`),
  untreated: blocks((tag) => `Untreated water (${tag}): treat before drinking`),
  'not-controlled': blocks((tag) => `Not officially controlled (${tag}): treat before drinking`),
  'not-stated-fit': blocks(() => 'Not stated fit to drink: treat before drinking'),
  'fit-on-condition': blocks((tag) => `Fit to drink only on some condition (${tag}): ask, or treat it`),
  'fit-unclear': blocks((tag) => `Whether it is fit to drink is unclear (${tag}): ask, or treat it`),
  'salt-unknown': blocks(() => 'Well water may be salty or foul, which no filter mends: have it tested'),
  'minerals-unknown': blocks(() => 'Hot springs may scald and hold minerals that no filter takes out'),
  'salt-found': blocks((on) => `You noted on ${on} that it is salty: only reverse osmosis takes out salt`),
  'line-lacks': blocks((detail) => `Your treatment line does not make it fit to drink: ${detail}`),
  'use-unknown': blocks(() => 'What the water is for, and whether it can be drawn, is not known'),

  'never-implied': weakens(
    (fuel) => `Its tags do not say that it sells ${fuel}, which many stations do not: ask first`,
  ),
  'other-fuels-listed': weakens((tags) => `Other fuels are listed (${tags}), yours is not: ask first`),
  'grade-not-sold': weakens(
    (tag) => `A grade of your fuel is not sold here (${tag}), no other is listed: ask first`,
  ),
  'fuel-kind-unknown': weakens(() => 'Its tags do not say that it sells your fuel for vehicles: ask first'),
  'fuel-unclear': weakens((tag) => `Whether it sells your fuel is unclear (${tag}): ask first`),
  'fuel-may-not-suit': weakens(
    (tag) => `Sells a fuel that not every engine of your kind takes (${tag}): check the handbook`,
  ),
  'lorries-only': weakens((tag) => `For heavy vehicles (${tag}): ask whether you are served`),
  'access-unclear': weakens((tag) => `Who may use it is unclear (${tag}): ask first`),
  'hard-to-fill': weakens((tag) => `A bottle cannot be filled here (${tag}), let alone a can`),
  'status-unclear': weakens((tag) => `Whether it works is unclear (${tag}): ask first`),
  'may-be-dry': weakens((tag) => `May be dry (${tag}): ask before you plan on it`),
  'season-unknown': weakens((detail) => `Only in season: ${detail}. Ask before you plan on it`),
  stale: weakens((on) => `Last edited or checked on ${on}, over three years before: may have changed since`),
  'evidence-below': blocks((detail) => `${detail}: confirm it, or ask for less`),

  'tags-differ': advises((detail) => `The objects merged here differ (${detail}): the worse reading is used`),
  'confirmation-expired': advises((detail) => `Your confirmation has expired (${detail}): confirm it again`),
  'confirmation-ahead': advises(
    (on) => `Your confirmation of ${on} lies after the day judged for, so it is not used`,
  ),
  'confirmation-undated': advises(
    (on) => `Your confirmation of ${on} cannot be weighed without a date of departure: give one`,
  ),

  confirmed: advises((on) => `You confirmed it on ${on}`),
  'confirmed-against-tags': advises((texts) => `Your confirmation stands against this: ${texts}`),
  'class-by-tags': advises(
    () => 'You confirmed that it gives water; whether that is fit to drink still goes by the map',
  ),
  'treat-everything': advises(
    () =>
      'Stated fit to drink, but you treat every source that is not confirmed: fit for a resident is not fit for you',
  ),
  'made-fit': advises((detail) => `Fit to drink only after your treatment line: ${detail}`),
  'treated-as-far-as-known': advises((detail) => `Reckoned as far as known: ${detail}`),
  'salt-noted': advises((on) => `You noted on ${on} that it is not salty`),
  'time-to-fill': advises((detail) => `Filling takes time: ${detail}`),
  'in-season': advises((detail) => `Only in season: ${detail}, and so on the day judged for`),
  'customers-only': advises((tag) => `For customers only (${tag})`),
  'access-unknown': advises((tag) => `Who may use it is not known (${tag})`),
  'lorry-pump': advises(
    (tag) => `Pump for heavy vehicles (${tag}): wide nozzle, may not fit your filler neck`,
  ),
  'diesel-kin': advises((tag) => `Diesel of another make (${tag}): check that your engine takes it`),
  'ethanol-blend': advises(
    (tag) => `Only petrol with ethanol is listed (${tag}): check that your engine takes it`,
  ),
  'low-octane': advises(
    (tag) => `Only petrol of low octane number is listed (${tag}): check that your engine takes it`,
  ),
  'grade-not-stated': advises(
    (tags) => `Whether its grade suits your engine is not stated (${tags}): ask first`,
  ),
  'powered-pump': advises((tag) => `The pump needs power (${tag})`),
  fee: advises((tag) => `Costs money (${tag})`),
  'opening-hours': advises((hours) => `Opening hours as mapped: ${hours}`),
  'check-date-ahead': advises((tag) => `A check date after the day judged for is not used (${tag})`),
  'mapper-doubt': advises((note) => `A mapper left a note to be looked into: ${note}`),
} as const satisfies Record<string, ReasonRule>;

export type ReasonCode = keyof typeof REASON_RULES;

/** A reason found, before it is put in words. */
export interface FoundReason {
  code: ReasonCode;
  detail: string;
}

export const found = (code: ReasonCode, detail = ''): FoundReason => ({ code, detail });

export const effectOf = (code: ReasonCode): ReasonEffect => REASON_RULES[code].effect;

/** True for what stands against a supply until the user confirms that it works. */
export const isAnswered = (code: ReasonCode): boolean =>
  REASON_RULES[code].answered && REASON_RULES[code].effect !== 'advises';

const ORDER = new Map(Object.keys(REASON_RULES).map((code, place) => [code, place]));

/** Reasons in words, in the table's order, each code once with its details joined. */
export function inWords(reasons: readonly FoundReason[]): Reason[] {
  const details = new Map<ReasonCode, Set<string>>();
  for (const { code, detail } of reasons) {
    const known = details.get(code) ?? new Set();
    known.add(detail.trim().replace(/\s+/g, ' '));
    details.set(code, known);
  }
  return [...details]
    .sort(([a], [b]) => ORDER.get(a)! - ORDER.get(b)!)
    .map(([code, set]) => ({ code, text: REASON_RULES[code].text([...set].sort().join('; ')) }));
}

const STRENGTH: Record<Evidence, number> = { confirmed: 3, stated: 2, implied: 1, doubtful: 0 };

/** True when `evidence` is at least as strong as `level`. */
export const reaches = (evidence: Evidence, level: Evidence): boolean =>
  STRENGTH[evidence] >= STRENGTH[level];

export const weakerOf = (a: Evidence, b: Evidence): Evidence => (STRENGTH[a] <= STRENGTH[b] ? a : b);

/** One level down; the lowest stays. */
export const ONE_DOWN: Record<Evidence, Evidence> = {
  confirmed: 'stated',
  stated: 'implied',
  implied: 'doubtful',
  doubtful: 'doubtful',
};
