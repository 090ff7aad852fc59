import type { Commodity } from '../../contract/common.ts';
import type { CoverArea, MappedFeature, Supplies } from '../input/sources.ts';
import type { Caution } from '../phrases/cautions.ts';
import { COMMODITIES } from '../quantity/commodities.ts';
import type { SpanM } from '../quantity/span.ts';
import { coverSpans, mergeSpans } from '../route/cover/cover-spans.ts';
import { commonSpans, spansNearRoads } from '../route/cover/near-roads.ts';
import { locate } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import { type DatedExtract, isNamed, type VouchedExtract } from '../supply/points/dated.ts';
import { placeOf } from '../supply/points/place.ts';
import { wantedFor } from '../supply/tags/wanted.ts';
import type { ToldExtract } from './analysis.ts';

/** A file without roads speaks for what lies so near to one of its objects, off the route and along it (ours). */
const OBJECT_REACH_M = 25_000;

/** What one area of an extract covers of the route. */
export interface AreaOnRoute {
  readonly area: CoverArea;
  readonly spans: readonly SpanM[];
}

export interface RouteCover {
  /** Stretches for which the extracts would show a supply of the commodity, in order. */
  readonly spans: Readonly<Record<Commodity, SpanM[]>>;
  readonly areas: readonly AreaOnRoute[];
  readonly cautions: readonly Caution[];
}

/**
 * What the extracts cover of a route: their areas, of these only what is near a road of the same extract, or near an
 * object of the commodity for a file without roads. The hull of a file's objects, and a file that may have been cut off, cover
 * nothing until the user vouches.
 */
export function coverOn(
  route: RouteLine,
  supplies: Supplies,
  vouched: readonly VouchedExtract[],
): RouteCover {
  const boundaries = boundariesOf(supplies, vouched);
  const areas: AreaOnRoute[] = boundaries.map((area) => ({ area, spans: coverSpans(route, area.rings) }));
  const unvouched = new Set<string>();
  const guessed = new Set<string>();
  for (const area of supplies.cover.filter((one) => one.maybeCut !== true || isWhole(one.source, vouched))) {
    const isVouched = vouched.some(({ file, hull }) => hull === true && isNamed(area.source, file));
    if (boundaries.some((told) => told.source === area.source && told.commodity === area.commodity)) continue;
    if (area.guessed) (isVouched ? guessed : unvouched).add(area.source);
    if (area.guessed && !isVouched) continue;
    const inside = coverSpans(route, area.rings);
    const trimmed = isVouched || inside.length === 0 ? inside : trim(route, supplies.features, area, inside);
    areas.push({ area, spans: trimmed });
  }
  const spansOf = (commodity: Commodity): SpanM[] =>
    mergeSpans(areas.flatMap(({ area, spans }) => (area.commodity === commodity ? spans : [])));
  return {
    spans: { fuel: spansOf('fuel'), water: spansOf('water') },
    areas,
    cautions: [
      ...[...guessed].map((source): Caution => ({ code: 'cover-guessed', facts: { source } })),
      ...[...unvouched].map((source): Caution => ({ code: 'cover-unvouched', facts: { source } })),
    ],
  };
}

/** Whether the user vouches that a file is whole. */
const isWhole = (source: string, vouched: readonly VouchedExtract[]): boolean =>
  vouched.some(({ file, whole }) => whole === true && isNamed(source, file));

/** What the readers say, without doubts about a file for which the user vouches. */
export const readersCautions = (
  { cautions }: Supplies,
  vouched: readonly VouchedExtract[],
): readonly Caution[] =>
  cautions.filter(({ code, facts }) => code !== 'maybe-cut' || !isWhole(facts.source, vouched));

/** The extracts, with a mark on each that may have been cut off while the user does not vouch for it. */
export function markCut(
  extracts: readonly DatedExtract[],
  supplies: Supplies,
  vouched: readonly VouchedExtract[],
): ToldExtract[] {
  const cut = new Set<string>();
  for (const { code, facts } of readersCautions(supplies, vouched))
    if (code === 'maybe-cut') cut.add(facts.source);
  return extracts.map((extract) => (cut.has(extract.source) ? { ...extract, maybeCut: true } : extract));
}

/** The areas that the user gives for extracts, whatever these hold. */
function boundariesOf({ extracts }: Supplies, vouched: readonly VouchedExtract[]): CoverArea[] {
  return vouched.flatMap(({ file, boundaries = [] }) =>
    extracts
      .filter(({ source }) => isNamed(source, file))
      .flatMap(({ source }) =>
        boundaries.flatMap(({ commodity: only, rings = [] }) =>
          COMMODITIES.filter((commodity) => only === undefined || only === commodity).map(
            (commodity): CoverArea => ({ commodity, rings, guessed: false, source }),
          ),
        ),
      ),
  );
}

/** Spans near roads by the cells that they were found with: an analysis comes at every keystroke. */
const nearRoads = new WeakMap<RouteLine, WeakMap<Int32Array, SpanM[]>>();

function roadSpans(route: RouteLine, cells: Int32Array): SpanM[] {
  const ofRoute = nearRoads.get(route) ?? new WeakMap<Int32Array, SpanM[]>();
  nearRoads.set(route, ofRoute);
  const spans = ofRoute.get(cells) ?? spansNearRoads(route, cells);
  ofRoute.set(cells, spans);
  return spans;
}

function trim(
  route: RouteLine,
  features: readonly MappedFeature[],
  area: CoverArea,
  inside: readonly SpanM[],
): SpanM[] {
  if (area.trimmedBy === undefined) return [...inside];
  if (area.trimmedBy === 'objects') return commonSpans(inside, objectSpans(route, features, area));
  return commonSpans(inside, roadSpans(route, area.trimmedBy.roads));
}

/** The stretches within reach of an object that the file shows of the commodity. */
function objectSpans(
  route: RouteLine,
  features: readonly MappedFeature[],
  { source, commodity }: CoverArea,
): SpanM[] {
  const spans: SpanM[] = [];
  for (const feature of features) {
    if (!isIn(feature, source) || !wantedFor(feature.tags).includes(commodity)) continue;
    const place = placeOf(feature.geometry);
    if (place === null) continue;
    const { atM, offM } = locate(route, ...place);
    if (offM <= OBJECT_REACH_M)
      spans.push({
        fromM: Math.max(0, atM - OBJECT_REACH_M),
        toM: Math.min(route.lengthM, atM + OBJECT_REACH_M),
      });
  }
  return mergeSpans(spans);
}

const isIn = ({ source, seenIn }: MappedFeature, name: string): boolean =>
  source === name || seenIn?.includes(name) === true;
