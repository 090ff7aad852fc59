import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { SupplyFindings, SupplyReason, SupplyReasonCode } from '../../phrases/supply.ts';

/**
 * What a reason does. `blocks`: the point does not count; a point counts exactly when none of its reasons blocks.
 * `weakens`: it lowers the evidence, and the level asked for decides. `advises`: good to know, the point counts as before.
 */
export type ReasonEffect = 'blocks' | 'weakens' | 'advises';

interface ReasonRule {
  readonly effect: ReasonEffect;
  /**
   * True when a confirmation by the user answers it ("it was open, it gave water"). What a working supply does not
   * answer stays: whether the fuel is the right one, and whether the water is fit to drink.
   */
  readonly answered: boolean;
}

const BLOCKS: ReasonRule = { effect: 'blocks', answered: false };
const BLOCKS_UNTIL_CONFIRMED: ReasonRule = { effect: 'blocks', answered: true };
const WEAKENS: ReasonRule = { effect: 'weakens', answered: true };
const ADVISES: ReasonRule = { effect: 'advises', answered: true };

/** Every reason of a supply point, in the order in which they are listed. Codes are stable; words: `server/words/en`. */
export const REASON_RULES: Record<SupplyReasonCode, ReasonRule> = {
  'reported-out': BLOCKS,
  'out-of-use': BLOCKS_UNTIL_CONFIRMED,
  closed: BLOCKS_UNTIL_CONFIRMED,
  broken: BLOCKS_UNTIL_CONFIRMED,
  'not-public': BLOCKS_UNTIL_CONFIRMED,
  'permit-needed': BLOCKS_UNTIL_CONFIRMED,
  'out-of-season': BLOCKS_UNTIL_CONFIRMED,
  'not-there-yet': BLOCKS,
  'no-longer-there': BLOCKS,
  'no-opening-found': BLOCKS_UNTIL_CONFIRMED,
  'no-pump': BLOCKS,
  'fuel-not-sold': BLOCKS,
  'grade-below-engine': BLOCKS,
  'blend-beyond-engine': BLOCKS,
  'for-aircraft': BLOCKS,
  'for-boats': BLOCKS_UNTIL_CONFIRMED,
  'for-trains': BLOCKS_UNTIL_CONFIRMED,
  'tags-contradict': BLOCKS,
  'for-fire-fighting': BLOCKS,
  'for-animals': BLOCKS,
  decorative: BLOCKS,
  'not-fit': BLOCKS,
  salty: BLOCKS,
  untreated: BLOCKS,
  'not-controlled': BLOCKS,
  'not-stated-fit': BLOCKS,
  'fit-on-condition': BLOCKS,
  'fit-unclear': BLOCKS,
  'salt-unknown': BLOCKS,
  'minerals-unknown': BLOCKS,
  'salt-found': BLOCKS,
  'line-lacks': BLOCKS,
  'use-unknown': BLOCKS,

  'never-implied': WEAKENS,
  'other-fuels-listed': WEAKENS,
  'grade-not-sold': WEAKENS,
  'fuel-kind-unknown': WEAKENS,
  'fuel-unclear': WEAKENS,
  'fuel-may-not-suit': WEAKENS,
  'lorries-only': WEAKENS,
  'not-for-cars': WEAKENS,
  'members-only': WEAKENS,
  'access-unclear': WEAKENS,
  'hard-to-fill': WEAKENS,
  'status-unclear': WEAKENS,
  'words-deny': WEAKENS,
  'may-be-dry': WEAKENS,
  'season-unknown': WEAKENS,
  'hours-unread': WEAKENS,
  stale: WEAKENS,
  undated: WEAKENS,
  'gone-in-newer': WEAKENS,
  'on-closed-ground': WEAKENS,
  'no-way-across': WEAKENS,
  'evidence-below': BLOCKS,

  'tags-differ': ADVISES,
  'confirmation-expired': ADVISES,
  'confirmation-ahead': ADVISES,
  'confirmation-undated': ADVISES,
  'confirmation-not-yet': ADVISES,

  confirmed: ADVISES,
  'confirm-again': ADVISES,
  'confirmed-against-tags': ADVISES,
  'class-by-tags': ADVISES,
  'treat-everything': ADVISES,
  'made-fit': ADVISES,
  'treated-as-far-as-known': ADVISES,
  'salt-noted': ADVISES,
  'time-to-fill': ADVISES,
  'in-season': ADVISES,
  'customers-only': ADVISES,
  'access-unknown': ADVISES,
  'lorry-pump': ADVISES,
  'diesel-kin': ADVISES,
  'ethanol-blend': ADVISES,
  'low-octane': ADVISES,
  'grade-not-stated': ADVISES,
  'powered-pump': ADVISES,
  fee: ADVISES,
  'opening-hours': ADVISES,
  'way-not-looked-at': ADVISES,
  'check-date-ahead': ADVISES,
  'mapper-doubt': ADVISES,
  'laid-litres': ADVISES,
  'litres-told': ADVISES,
  'own-point': ADVISES,
  corrected: ADVISES,
};

/** A reason found, with what it was found by. */
export type FoundReason = {
  readonly [Code in SupplyReasonCode]: { readonly code: Code; readonly finding: SupplyFindings[Code] };
}[SupplyReasonCode];

export const found = <Code extends SupplyReasonCode>(
  code: Code,
  finding: SupplyFindings[Code],
): FoundReason => ({ code, finding }) as FoundReason;

export const effectOf = (code: SupplyReasonCode): ReasonEffect => REASON_RULES[code].effect;

/** True for what stands against a supply until the user confirms that it works. */
export const isAnswered = (code: SupplyReasonCode): boolean =>
  REASON_RULES[code].answered && REASON_RULES[code].effect !== 'advises';

const ORDER = Object.fromEntries(Object.keys(REASON_RULES).map((code, place) => [code, place])) as Record<
  SupplyReasonCode,
  number
>;

/** Reasons in the table's order, each code once with all its findings, whatever order these were come by in. */
export function reasonsFrom(reasons: readonly FoundReason[]): SupplyReason[] {
  const findings = new Map<SupplyReasonCode, FoundReason['finding'][]>();
  for (const { code, finding } of reasons) {
    const known = findings.get(code);
    if (known === undefined) findings.set(code, [finding]);
    else known.push(finding);
  }
  return [...findings]
    .sort(([a], [b]) => ORDER[a] - ORDER[b])
    .map(([code, all]) => ({ code, facts: { findings: all.sort(byText) } }) as SupplyReason);
}

/** A judged supply as far as a further reason can change it. */
interface Judged {
  readonly evidence: Evidence;
  readonly commodity: Commodity;
  readonly counts: boolean;
  readonly reasons: readonly SupplyReason[];
}

/** The reasons of a judged supply one by one, as they were found. */
const foundIn = (reasons: readonly SupplyReason[]): FoundReason[] =>
  reasons.flatMap(({ code, facts }) =>
    (facts.findings as readonly FoundReason['finding'][]).map(
      (finding) => ({ code, finding }) as FoundReason,
    ),
  );

/**
 * A judged supply with further reasons that weaken or advise; where one weakens, no more than doubt is left, and `level`
 * is the lowest evidence that counts. Without reasons it stays as it is.
 */
export function withFurther<Supply extends Judged>(
  supply: Supply,
  further: readonly FoundReason[],
  level: Evidence,
): Supply {
  if (further.length === 0) return supply;
  const weakens = further.some(({ code }) => effectOf(code) === 'weakens');
  const evidence = weakens ? 'doubtful' : supply.evidence;
  const reasons = [...foundIn(supply.reasons).filter(({ code }) => code !== 'evidence-below'), ...further];
  if (!reaches(evidence, level))
    reasons.push(found('evidence-below', { evidence, commodity: supply.commodity, from: level }));
  const counts = reasons.every(({ code }) => effectOf(code) !== 'blocks');
  return { ...supply, evidence, counts, reasons: reasonsFrom(reasons) };
}

const byText = (a: unknown, b: unknown): number => {
  const [one, other] = [JSON.stringify(a) ?? '', JSON.stringify(b) ?? ''];
  return one < other ? -1 : Number(one > other);
};

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
