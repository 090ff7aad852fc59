import type { OsmType, RawElement } from './raw-element.ts';

/** "node/1": the name of an object in all the project's lists. */
export const keyOf = (element: Pick<RawElement, 'type' | 'id'>): string => `${element.type}/${element.id}`;

export const keyOfRef = (type: OsmType, ref: number): string => `${type}/${ref}`;

/** The kind and number in "node/1"; null for anything else. */
export function parseKey(key: string): { type: OsmType; id: number } | null {
  const match = /^(node|way|relation)\/(-?\d+)$/.exec(key);
  const id = Number(match?.[2]);
  return match === null || !Number.isSafeInteger(id) ? null : { type: match[1] as OsmType, id };
}
