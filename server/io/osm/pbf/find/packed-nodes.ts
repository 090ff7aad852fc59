import { numberAt } from '../../../../core/lists/at.ts';
import type { RawElement } from '../../extract/raw-element.ts';

/** Id, latitude, longitude and version of each node in turn; NaN for what is not there. */
export type PackedNodes = Float64Array;

const FIELDS = 4;

/** Packs nodes, since there are many and objects are costly to send between threads. */
export function packNodes(nodes: readonly RawElement[]): PackedNodes {
  const pack = new Float64Array(nodes.length * FIELDS);
  nodes.forEach(({ id, lat = Number.NaN, lon = Number.NaN, version = Number.NaN }, index) => {
    pack.set([id, lat, lon, version], index * FIELDS);
  });
  return pack;
}

/** The nodes of a pack as numbers. */
export function* numbersOf(pack: PackedNodes) {
  for (let at = 0; at < pack.length; at += FIELDS) {
    yield {
      id: numberAt(pack, at),
      lat: numberAt(pack, at + 1),
      lon: numberAt(pack, at + 2),
      version: numberAt(pack, at + 3),
    };
  }
}

/** The nodes of a pack as elements. */
export function unpackNodes(pack: PackedNodes): RawElement[] {
  const nodes: RawElement[] = [];
  for (const { id, lat, lon, version } of numbersOf(pack)) {
    const node: RawElement = { type: 'node', id };
    if (!Number.isNaN(version)) node.version = version;
    if (!Number.isNaN(lat)) Object.assign(node, { lat, lon });
    nodes.push(node);
  }
  return nodes;
}
