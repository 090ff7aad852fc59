import type { MapPapers } from '../../../../core/input/sources.ts';

/** What data of OpenStreetMap has to be credited with (openstreetmap.org/copyright), where a file does not say so itself. */
const OSM_ATTRIBUTION = '© OpenStreetMap contributors';
const OSM_LICENCE = 'ODbL 1.0';

/** Long notices are cut: a line on top of the answer names the source, the file has the rest. Ours. */
const NOTICE_MAX_CHARACTERS = 240;

/** What a file says of itself, as it stands there; null or not a text where it does not. */
export interface PapersWritten {
  asOf?: unknown;
  attribution?: unknown;
  licence?: unknown;
}

function textOf(value: unknown): string | null {
  if (typeof value !== 'string') return null;
  const text = value.replace(/\s+/g, ' ').trim().slice(0, NOTICE_MAX_CHARACTERS);
  // A copy of its own: a piece of a large document would keep all of that alive.
  return text === '' ? null : Buffer.from(text).toString();
}

const isTime = (text: string): boolean => /^\d{4}-\d{2}-\d{2}/.test(text) && !Number.isNaN(Date.parse(text));

/** Overpass writes a filler where its base has no time ("v0.7.62 …", ""), so that what is no time is none. */
const timeOf = (value: unknown): string | null => {
  const text = textOf(value);
  return text !== null && isTime(text) ? text : null;
};

/** The papers of a file of OSM's own formats: what it leaves unsaid of its source is OpenStreetMap's. */
export function osmPapers({ asOf, attribution, licence }: PapersWritten): MapPapers {
  const own = textOf(attribution);
  return {
    asOf: timeOf(asOf),
    attribution: own ?? OSM_ATTRIBUTION,
    licence: textOf(licence) ?? (own === null ? OSM_LICENCE : null),
  };
}

/** The papers of a file that may come from anywhere: only what it says. */
export const plainPapers = ({ asOf, attribution, licence }: PapersWritten): MapPapers => ({
  asOf: timeOf(asOf),
  attribution: textOf(attribution),
  licence: textOf(licence),
});
