import type { Analysis as AnalysisTold } from '../contract/analysis.ts';
import type { MapData } from '../contract/answers/map.ts';
import type { RigFile } from '../contract/rig.ts';
import type { Analysis } from '../core/analyse/analysis.ts';
import type { ChangingMapData } from '../core/mapview/map-data.ts';
import { groupedBySpan } from '../core/plan/question/supply-stops.ts';
import { METRES_OF_WAY } from '../core/quantity/term.ts';
import { answerOf } from '../words/answer/answer-of.ts';
import { isReadersOwn, metricText } from '../words/parts/metric.ts';
import type { Part } from '../words/parts/part.ts';
import type { Utterance } from '../words/words-of.ts';
import { wordsOf } from '../words/words-of.ts';

/** Distances along and off the route: metres in core, kilometres in answers. */
const KM_NAMES = {
  atM: 'atKm',
  fromM: 'fromKm',
  toM: 'toKm',
  lengthM: 'lengthKm',
  longestStepM: 'longestStepKm',
  wayM: 'wayKm',
  offRouteM: 'offRouteKm',
  detourM: 'detourKm',
  turnBackM: 'turnBackKm',
  reserveFromM: 'reserveFromKm',
  runsDryM: 'runsDryKm',
  endsAtM: 'endsAtKm',
  backToM: 'backToKm',
  pourAtM: 'pourAtKm',
  drivingM: 'drivingKm',
  moreDrivingM: 'moreDrivingKm',
  stepM: 'stepKm',
  m: 'km',
  beforeM: 'beforeKm',
  afterM: 'afterKm',
  rangeM: 'rangeKm',
  longestM: 'longestKm',
} as const;
type KmNames = typeof KM_NAMES;
type NameOf<K> = K extends keyof KmNames ? KmNames[K] : K;

/** A value of core as answers have it. */
export type Contracted<T> = T extends { readonly phrase: string; readonly facts: unknown }
  ? string
  : T extends { readonly code: infer Code; readonly facts: unknown }
    ? { code: Code; text: string; parts?: Part[] } & {
        -readonly [K in keyof T as K extends 'code' | 'facts' ? never : NameOf<K>]: Contracted<T[K]>;
      }
    : T extends readonly (infer E)[]
      ? number extends T['length']
        ? Contracted<E>[]
        : { -readonly [I in keyof T]: Contracted<T[I]> }
      : T extends typeof METRES_OF_WAY
        ? 'km'
        : T extends object
          ? { -readonly [K in keyof T as NameOf<K>]: Contracted<T[K]> }
          : T;

/**
 * The one way from core to the contract: metres along and off the route become kilometres, and what core says becomes
 * `text` in metric units, with `parts` beside it (`…Parts` beside a phrase of another name) where it holds figures or
 * places, so that a reader can set them in other units.
 */
export const toContract = <T>(value: T): Contracted<T> => convert(value) as Contracted<T>;

/** An analysis, with its answer in sentences. Rig and trip are in the contract's units already. */
export function analysisToContract(analysis: Analysis): AnalysisTold {
  const { rig, trip, onwardTold: _told, ...rest } = analysis;
  return {
    ...toContract({ ...rest, passings: withStops(rest.passings) }),
    answer: answerOf(analysis),
    rig: withHazards(rig, analysis.treatment),
    trip,
  };
}

/** Passings in their order, each with the number of the stop that it belongs to. */
function withStops<P extends { readonly atM: number }>(passings: readonly P[]): (P & { stop: number })[] {
  const numbers = new Map(
    groupedBySpan(passings).flatMap((group, stop) => group.map((passing) => [passing, stop] as const)),
  );
  return passings.map((passing) => ({ ...passing, stop: numbers.get(passing) ?? 0 }));
}

/** The rig's file with what is expected of every kind of source, as it was reckoned with. */
function withHazards(rig: RigFile, report: Analysis['treatment']): RigFile {
  if (rig.treatment === undefined || report === null) return rig;
  const hazards = Object.fromEntries(report.sources.map(({ kind, hazard }) => [kind, toContract(hazard)]));
  return { ...rig, treatment: { ...rig.treatment, hazards } };
}

/** What the map draws. Coordinates stay; what is said of pieces and marks is converted. */
export function mapToContract({ bbox, line, route, supplies, notice }: ChangingMapData): MapTold {
  return {
    bbox,
    line: { coordinates: line.coordinates, atKm: line.atM.map((metres) => metres / 1000) },
    route: { type: route.type, features: route.features.map(featureToContract) },
    supplies: { type: supplies.type, features: supplies.features.map(featureToContract) },
    notice,
  };
}

const featureToContract = <G, P>({ geometry, properties }: { geometry: G; properties: P }) => ({
  type: 'Feature' as const,
  geometry,
  properties: toContract(properties),
});

/** The contract's map without its ground and the extracts' outlines, which stay as they were loaded. */
export type MapTold = Omit<MapData, 'ground' | 'extracts'>;

function convert(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(convert);
  if (typeof value !== 'object' || value === null) return value;
  if (isSaid(value)) return 'phrase' in value ? metricText(wordsOf(value)) : saidInFull(value);
  return convertObject(value as Record<string, unknown>);
}

function convertObject(value: Record<string, unknown>): Record<string, unknown> {
  const result: Record<string, unknown> = {};
  for (const [name, one] of Object.entries(value)) {
    if (isKmName(name) && typeof one !== 'string') {
      result[KM_NAMES[name]] = inKm(one);
      continue;
    }
    result[name] = convert(one);
    const parts = partsBeside(one);
    if (parts !== null) result[name === 'text' ? 'parts' : `${name}Parts`] = parts;
  }
  return value.unit === METRES_OF_WAY ? { ...result, ...termInKm(value) } : result;
}

/** The figures of a term in metres of way. */
function termInKm(term: Record<string, unknown>): Record<string, unknown> {
  const figures = ['value', 'amount'].flatMap((name) => {
    const metres = term[name];
    return typeof metres === 'number' ? [[name, metres / 1000]] : [];
  });
  return { ...Object.fromEntries(figures), unit: 'km' };
}

/** Code, text and parts, then whatever else it has: the stretch that it speaks of. */
function saidInFull(said: Exclude<Utterance, { phrase: string }>): unknown {
  const { code, facts: _facts, ...rest } = said;
  const parts = wordsOf(said);
  return {
    code,
    text: metricText(parts),
    ...(isReadersOwn(parts) ? { parts } : {}),
    ...convertObject(rest),
  };
}

/** Parts of a phrase, or of each of several, where any of them has figures. */
function partsBeside(value: unknown): unknown {
  if (Array.isArray(value)) {
    if (!value.every(isPhrase)) return null;
    const lists = value.map((phrase) => wordsOf(phrase));
    return lists.some(isReadersOwn) ? lists : null;
  }
  if (!isPhrase(value)) return null;
  const parts = wordsOf(value);
  return isReadersOwn(parts) ? parts : null;
}

/** A number, null or list of numbers, in metres. Nested values, as of levels, come converted. */
function inKm(value: unknown): unknown {
  if (typeof value === 'number') return value / 1000;
  return Array.isArray(value) && value.every((one) => typeof one === 'number')
    ? value.map((metres: number) => metres / 1000)
    : convert(value);
}

const isKmName = (name: string): name is keyof KmNames => Object.hasOwn(KM_NAMES, name);

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Tags of OSM objects have any names, but only texts: facts are an object. */
const isSaid = (value: object): value is Utterance =>
  'facts' in value && isObject(value.facts) && ('code' in value || 'phrase' in value);

const isPhrase = (value: unknown): value is Utterance & { phrase: string } =>
  isObject(value) && 'phrase' in value && isSaid(value);
