import type { Commodity } from '../../../contract/common.ts';
import type { MapExtract, MappedFeature, Supplies } from '../../input/sources.ts';
import type { Caution } from '../../phrases/cautions.ts';

/** OpenStreetMap began on 9 August 2004: what is dated before was not mapped then. */
const FIRST_DAY = '2004-08-09';
const DAY_MS = 86_400_000;

/** What the user vouches for of a file. */
export interface VouchedExtract {
  /** The file as it was given, or its name alone. */
  readonly file: string;
  /** ISO date for which its content holds. */
  readonly asOf?: string | undefined;
  /** The area between its outermost objects is all on the map. */
  readonly hull?: boolean | undefined;
  /** The file was not cut off, though it looks so. */
  readonly whole?: boolean | undefined;
  /** What it covers, in place of what is made out from the file; one whose file was not read covers nothing. */
  readonly boundaries?:
    | readonly { readonly commodity?: Commodity; readonly rings?: [number, number][][] }[]
    | undefined;
}

/** An extract with its date as it is reckoned with. */
export interface DatedExtract extends Omit<MapExtract, 'asOf'> {
  /** ISO time or date for which its content holds; null when nobody told, or what was told cannot be. */
  readonly asOf: string | null;
  readonly asOfBy: 'file' | 'user' | null;
}

/** A feature whose age is settled: `editedAt` is never later than its file, which stands in where nothing else is known. */
export interface DatedFeature extends MappedFeature {
  /** Neither object nor file is dated. */
  undated?: true;
  /** ISO date of its file. */
  mapOn?: string;
  /** A newer general extract that covers its place and has it not. */
  goneIn?: string;
}

export interface Dated {
  readonly features: DatedFeature[];
  readonly extracts: DatedExtract[];
  readonly cautions: Caution[];
}

/** Whether `file` names this source: in full, or by the name at its end. */
export const isNamed = (source: string, file: string): boolean =>
  source === file || source.split(/[\\/]/).at(-1) === file;

const dayOf = (time: string): string => time.slice(0, 10);

/** The clock of a server may be a day ahead of the traveller's calendar. */
const latestDay = (today: string): string =>
  new Date(Date.parse(`${today}T00:00:00Z`) + DAY_MS).toISOString().slice(0, 10);

type Judged =
  | { asOf: string; why: null }
  | { asOf: null; why: 'untold' | 'ahead' | 'absurd'; on: string | null };

function judgeTime(time: string | null, today: string): Judged {
  if (time === null) return { asOf: null, why: 'untold', on: null };
  const on = dayOf(time);
  if (on > latestDay(today)) return { asOf: null, why: 'ahead', on };
  if (!(on >= FIRST_DAY)) return { asOf: null, why: 'absurd', on };
  return { asOf: time, why: null };
}

/** The date of a file: of what it says and what the user vouches for the older one, since neither makes the other newer. */
function dateExtract(
  { asOf, ...extract }: MapExtract,
  vouched: readonly VouchedExtract[],
  today: string,
): { extract: DatedExtract; told: Judged } {
  const own = judgeTime(asOf, today);
  const vouch = vouched.find((entry) => entry.asOf !== undefined && isNamed(extract.source, entry.file));
  const users = judgeTime(vouch?.asOf ?? null, today);
  if (users.asOf !== null && (own.asOf === null || users.asOf < dayOf(own.asOf)))
    return { extract: { ...extract, asOf: users.asOf, asOfBy: 'user' }, told: users };
  if (own.asOf !== null) return { extract: { ...extract, asOf: own.asOf, asOfBy: 'file' }, told: own };
  return {
    extract: { ...extract, asOf: null, asOfBy: null },
    told: own.why === 'untold' && users.why !== 'untold' ? users : own,
  };
}

function dateFeature(feature: MappedFeature, mapAt: string | null, today: string): DatedFeature {
  const edited = judgeTime(feature.editedAt, today).asOf;
  if (mapAt === null) {
    const dated: DatedFeature = { ...feature, editedAt: edited };
    // What the user marked is not judged by the age of any file.
    return edited === null && feature.source !== undefined ? { ...dated, undated: true } : dated;
  }
  const editedAt = edited !== null && dayOf(edited) > dayOf(mapAt) ? mapAt : edited;
  return { ...feature, editedAt, mapOn: dayOf(mapAt) };
}

/**
 * Settles how old every object is: by its own time of edit, but never newer than its file; by its file's date where it has
 * none. A date that lies ahead of today (ISO date), or before there was a map, is none.
 */
export function datedSupplies(
  { features, extracts }: Pick<Supplies, 'features' | 'extracts'>,
  vouched: readonly VouchedExtract[],
  today: string,
): Dated {
  const dates = extracts.map((extract) => dateExtract(extract, vouched, today));
  const bySource = new Map(dates.map(({ extract }) => [extract.source, extract.asOf]));
  const dated = features.map((feature) =>
    dateFeature(feature, bySource.get(feature.source ?? '') ?? null, today),
  );
  const undated = new Map<string, number>();
  for (const feature of dated) {
    if (feature.undated === undefined || feature.source === undefined) continue;
    undated.set(feature.source, (undated.get(feature.source) ?? 0) + 1);
  }
  const cautions = dates.flatMap(({ extract: { source }, told }): Caution[] => {
    const objects = undated.get(source) ?? 0;
    if (told.why === null || (told.why === 'untold' && objects === 0)) return [];
    return [{ code: 'age-unknown', facts: { source, why: told.why, on: told.on, objects } }];
  });
  for (const { file } of vouched)
    if (!extracts.some(({ source }) => isNamed(source, file)))
      cautions.push({ code: 'extract-not-given', facts: { file } });
  return { features: dated, extracts: dates.map(({ extract }) => extract), cautions };
}
