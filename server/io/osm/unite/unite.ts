import { isDeepStrictEqual } from 'node:util';
import type { Bbox, Commodity } from '../../../contract/common.ts';
import type { MappedFeature, PassedOver, Supplies, Surroundings, Tags } from '../../../core/input/sources.ts';
import { coverOfUser } from '../../../core/route/cover/box-cover.ts';
import { lentOnly } from '../extract/detached.ts';
import { keyOf, keyOfRef, parseKey } from '../extract/element-key.ts';
import { type FarObjects, farObjects } from '../extract/far-objects.ts';
import { type Age, compareAge, isOfKnownAge } from '../extract/newest.ts';
import type { RawElement } from '../extract/raw-element.ts';
import type { RawExtract } from '../extract/raw-extract.ts';
import { newestOf } from '../keep/newest-element.ts';
import { convertKeyed } from './convert.ts';
import { coverOfExtract } from './cover.ts';

/** The version of an object that is taken, so far. */
type Candidate = { source: string; mapAt: string | null } & (
  | { kind: 'element'; element: RawElement; wanted: boolean }
  | { kind: 'feature'; feature: MappedFeature }
);

const ageOf = (candidate: Candidate): Age =>
  candidate.kind === 'element' ? candidate.element : { timestamp: candidate.feature.editedAt };

const suppliesSomething = (candidate: Candidate): boolean => candidate.kind === 'feature' || candidate.wanted;

const tagsOf = (candidate: Candidate): Tags =>
  candidate.kind === 'element' ? (candidate.element.tags ?? {}) : candidate.feature.tags;

/**
 * As compareAge; one of which nothing is known is as new as its file, so that two dated files decide between it and
 * another.
 */
function compareCandidates(a: Candidate, b: Candidate): number {
  if (isOfKnownAge(ageOf(a)) && isOfKnownAge(ageOf(b))) return compareAge(ageOf(a), ageOf(b));
  const [aAt, bAt] = [Date.parse(a.mapAt ?? ''), Date.parse(b.mapAt ?? '')];
  const order = aAt - bAt;
  return Number.isNaN(order) || order === 0 ? compareAge(ageOf(a), ageOf(b)) : order;
}

/** Of two versions of one object: the newer; of two that cannot be told apart a supply, and the later file's. */
function winnerOf(earlier: Candidate, later: Candidate): Candidate {
  const order = compareCandidates(later, earlier);
  if (order < 0) return earlier;
  if (order > 0) return later;
  // What only lends its place is often given without its tags, so it says nothing against a supply.
  if (suppliesSomething(earlier) && !suppliesSomething(later)) return earlier;
  if (earlier.kind === 'element' && later.kind === 'element') {
    return { ...later, element: newestOf(earlier.element, later.element) };
  }
  return later;
}

/** What is left of an older version of an object that lies far away now: at most that it lends geometry. */
const lentOf = (candidate: Candidate): Candidate | null =>
  candidate.kind === 'feature' ? null : { ...candidate, element: lentOnly(candidate.element), wanted: false };

/** The same point of the user's, whichever file it is in. */
function isSameOwn(a: MappedFeature, b: MappedFeature): boolean {
  const { id: _a, source: _of, ...one } = a;
  const { id: _b, source: _from, ...other } = b;
  return isDeepStrictEqual(one, other);
}

/** Brings the objects of several extracts together, each in its newest version. */
class Union {
  readonly #winners = new Map<string, Candidate>();
  readonly skipped: PassedOver[] = [];
  readonly contested: ReadonlySet<string>;
  /** Age of objects whose newest version so far is far away. */
  readonly #far = new Map<string, Age>();
  /** Tags of objects of which the files differ and nothing tells the newer. */
  readonly #otherTags = new Map<string, Tags[]>();
  readonly #sources = new Map<string, readonly string[]>();

  /** `contested`: objects that are far away in one file and were kept of another. */
  constructor(contested: ReadonlySet<string>) {
    this.contested = contested;
  }

  offer(id: string, offered: Candidate): void {
    const far = this.#far.get(id);
    let candidate: Candidate | null = offered;
    if (far !== undefined && suppliesSomething(offered)) {
      if (compareAge(ageOf(offered), far) < 0) candidate = lentOf(offered);
      else this.#far.delete(id);
    }
    if (candidate !== null) this.#offerNear(id, candidate);
  }

  #offerNear(id: string, candidate: Candidate): void {
    this.#noteSource(id, candidate);
    const known = this.#winners.get(id);
    const winner = known === undefined ? candidate : winnerOf(known, candidate);
    this.#winners.set(id, winner);
    if (known === undefined) return;
    this.#noteReadings(id, known, candidate);
    const loser = winner === known ? candidate : known;
    if (suppliesSomething(loser) && !suppliesSomething(winner)) {
      this.skipped.push({
        id,
        reason: { phrase: 'skipped-newer-elsewhere', facts: { source: winner.source } },
      });
    }
  }

  #noteSource(id: string, candidate: Candidate): void {
    if (!suppliesSomething(candidate)) return;
    const known = this.#sources.get(id) ?? [];
    if (!known.includes(candidate.source)) this.#sources.set(id, [...known, candidate.source]);
  }

  /** The files that show an object as a supply. */
  seenIn(id: string): readonly string[] {
    return this.#sources.get(id) ?? [];
  }

  /** Keeps what the other of two says that cannot be told apart in age; what is older says nothing any more. */
  #noteReadings(id: string, known: Candidate, candidate: Candidate): void {
    if (!suppliesSomething(known) || !suppliesSomething(candidate)) return;
    const order = compareCandidates(candidate, known);
    if (order > 0) this.#otherTags.delete(id);
    if (order !== 0 || isDeepStrictEqual(tagsOf(known), tagsOf(candidate))) return;
    const others = this.#otherTags.get(id) ?? [];
    this.#otherTags.set(id, [...others, tagsOf(known), tagsOf(candidate)]);
  }

  /** What other files have of an object in tags that are not those taken. */
  otherTagsOf({ id, tags }: MappedFeature): Tags[] {
    return (this.#otherTags.get(id) ?? []).filter((other) => !isDeepStrictEqual(other, tags));
  }

  /** Takes away what a newer version supplies no more: deleted, or only lending geometry at most. */
  takeAway(gone: FarObjects, source: string, isDeleted: boolean): void {
    for (const { type, id: number, ...age } of farObjects(gone)) {
      const id = keyOfRef(type, number);
      const known = this.#winners.get(id);
      if (known === undefined || !suppliesSomething(known)) continue;
      const order = compareAge(age, ageOf(known));
      if (order < 0 || (order === 0 && !isDeleted)) continue;
      const lent = lentOf(known);
      if (lent === null) this.#winners.delete(id);
      else this.#winners.set(id, lent);
      this.skipped.push({ id, reason: { phrase: 'skipped-newer-elsewhere', facts: { source } } });
    }
  }

  /** Ids of the user's own are by name, so two files may give one id to two places. */
  offerOwn(feature: MappedFeature, source: string, mapAt: string | null): void {
    let id = feature.id;
    for (let n = 2; ; n += 1) {
      const known = this.#winners.get(id);
      if (known === undefined) break;
      if (known.kind === 'feature' && isSameOwn(known.feature, feature)) return;
      id = `${feature.id}-${n}`;
    }
    this.#winners.set(id, { kind: 'feature', feature: { ...feature, id }, source, mapAt });
  }

  /** Offers an object that lies too far off to be kept, of which only the age is known. */
  #offerFar(id: string, age: Age): void {
    const before = this.#far.get(id);
    if (before !== undefined && compareAge(age, before) < 0) return;
    const known = this.#winners.get(id);
    if (known !== undefined && suppliesSomething(known)) {
      const order = compareAge(age, ageOf(known));
      // One and the same version, that is near by what another file has of it: this file has less of it.
      if (order < 0 || (order === 0 && isOfKnownAge(age))) return;
      const lent = lentOf(known);
      if (lent === null) this.#winners.delete(id);
      else this.#winners.set(id, lent);
    }
    this.#far.set(id, age);
  }

  /** Offers what a file has far away, as far as another file has it too. */
  offerFar(far: FarObjects): void {
    if (this.contested.size === 0) return;
    for (const { type, id, ...age } of farObjects(far)) {
      const key = keyOfRef(type, id);
      if (this.contested.has(key)) this.#offerFar(key, age);
    }
  }

  get winners(): ReadonlyMap<string, Candidate> {
    return this.#winners;
  }
}

/** Objects that are far away in one file and were kept of another; within one file no object is both. */
function contestedOf(extracts: readonly RawExtract[], extra: readonly MappedFeature[]): ReadonlySet<string> {
  const far = new Set<string>();
  if (extracts.length < 2 && extra.every(({ id }) => parseKey(id) === null)) return far;
  for (const extract of extracts)
    for (const { type, id } of farObjects(extract.far)) far.add(keyOfRef(type, id));
  if (far.size === 0) return far;
  const contested = new Set<string>();
  const note = (id: string): void => {
    if (far.has(id)) contested.add(id);
  };
  for (const { elements, features } of extracts) {
    for (const element of elements) note(keyOf(element));
    for (const feature of features) note(feature.id);
  }
  for (const feature of extra) note(feature.id);
  return contested;
}

function gather(extracts: readonly RawExtract[], extra: readonly MappedFeature[]): Union {
  const union = new Union(contestedOf(extracts, extra));
  const offerFeature = (feature: MappedFeature, source: string, mapAt: string | null): void => {
    if (parseKey(feature.id) === null) union.offerOwn(feature, source, mapAt);
    else union.offer(feature.id, { kind: 'feature', feature, source, mapAt });
  };
  for (const { source, papers, elements, wanted, features, far } of extracts) {
    const mapAt = papers.asOf;
    // First, so that of what cannot be told apart within one file the near is taken.
    union.offerFar(far);
    for (const element of elements) {
      const id = keyOf(element);
      union.offer(id, { kind: 'element', element, wanted: wanted.has(id), source, mapAt });
    }
    for (const feature of features) offerFeature({ ...feature, source }, source, mapAt);
  }
  for (const feature of extra) offerFeature(feature, 'the route', null);
  for (const { source, deleted, unwanted } of extracts) {
    union.takeAway(deleted, source, true);
    if (extracts.length > 1) union.takeAway(unwanted, source, false);
  }
  return union;
}

/** The features of the winners, in the order in which their objects first came. */
function featuresOf(union: Union) {
  const elements = new Map<string, RawElement>();
  const wanted = new Set<string>();
  for (const [id, candidate] of union.winners) {
    if (candidate.kind !== 'element') continue;
    elements.set(id, candidate.element);
    if (candidate.wanted) wanted.add(id);
  }
  const converted = convertKeyed(elements, wanted);
  const byId = new Map(converted.features.map((feature) => [feature.id, feature]));
  for (const [id, candidate] of union.winners)
    if (candidate.kind === 'feature') byId.set(id, candidate.feature);
    else {
      const feature = byId.get(id);
      if (feature !== undefined) byId.set(id, { ...feature, source: candidate.source });
    }
  const features = [...union.winners.keys()].flatMap((id) => {
    const feature = byId.get(id);
    if (feature === undefined) return [];
    const otherTags = union.otherTagsOf(feature);
    const seenIn = union.seenIn(id);
    return [
      {
        ...feature,
        ...(otherTags.length > 0 && { otherTags }),
        ...(seenIn.length > 1 && { seenIn }),
      },
    ];
  });
  return { ...converted, features };
}

/** The newest time of edit among the features of one file; texts of one form, so that they compare like times. */
function newestEditOf(features: readonly MappedFeature[], source: string): string | null {
  let newest: string | null = null;
  for (const feature of features) {
    if (feature.source !== source || feature.editedAt === null) continue;
    if (newest === null || feature.editedAt > newest) newest = feature.editedAt;
  }
  return newest;
}

/** The ground around the route as all the extracts show it; an object of several is taken as each has it. */
function surroundingsOf(extracts: readonly RawExtract[]): Surroundings {
  return {
    objects: extracts.flatMap(({ surroundings }) => surroundings),
    roads: extracts.flatMap(({ source, drawnRoads }) =>
      drawnRoads === null ? [] : [{ source, ...drawnRoads }],
    ),
  };
}

/**
 * Unites extracts, later ones given later, with features of other origin (the route's own waypoints) and areas that the
 * user vouches for. An object that several files have is taken once, in its newest version: by version number, then by
 * time of edit, one of known age before one of unknown, then from the later file. Every wanted object gives one feature
 * or one entry in `skipped`.
 */
export function unite(
  extracts: readonly RawExtract[],
  extra: readonly MappedFeature[],
  userCover: readonly { commodity: Commodity; bbox: Bbox }[],
): Supplies {
  const union = gather(extracts, extra);
  const { features, skipped, cautions } = featuresOf(union);
  // What one file has in parts and another has far away lies far away.
  const unplaced = skipped.filter(({ id }) => !union.contested.has(id));
  const covers = extracts.map(coverOfExtract);
  const found = new Set(features.map((feature) => feature.id));
  const reported = new Set<string>();
  const lost = [...extracts.flatMap((extract) => extract.skipped), ...union.skipped, ...unplaced].filter(
    ({ id }) => {
      if (parseKey(id) === null) return true;
      // What one file could not place, another may have had whole.
      if (found.has(id) || reported.has(id)) return false;
      reported.add(id);
      return true;
    },
  );
  return {
    extracts: extracts.map(({ source, papers }) => ({
      source,
      ...papers,
      newestEdit: newestEditOf(features, source),
    })),
    features,
    cover: [...covers.flatMap((cover) => cover.areas), ...coverOfUser(userCover)],
    skipped: lost,
    surroundings: surroundingsOf(extracts),
    cautions: [
      ...extracts.flatMap((extract) => extract.cautions),
      ...covers.flatMap((cover) => cover.cautions),
      ...cautions,
    ],
  };
}
