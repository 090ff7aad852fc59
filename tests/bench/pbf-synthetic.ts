import { closeSync, existsSync, mkdirSync, openSync, renameSync, statSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PbfEncoder } from '../../fixtures/pbf-writer.ts';

const FOLDER = fileURLToPath(new URL('./.data/', import.meta.url));

/** Share of the file that each type takes before the next begins; as in country extracts, nodes weigh most. */
const NODE_SHARE = 0.68;
const WAY_SHARE = 0.985;
const NODES_PER_WAY = 9;
/** One node in a hundred has tags. */
const TAGGED = 0.01;

/** Mulberry32 (Tommy Ettinger, public domain): small, seeded, the same everywhere. */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Ids rise with small gaps and now and then a large one, as in extracts. */
const nodeIdOf = (index: number): number =>
  1_000_000 + index + 3 * Math.floor(index / 17) + 5_000 * Math.floor(index / 6_000);

type Tags = Record<string, string>;

function nodeTags(random: () => number, number: number): Tags {
  const dice = random();
  const house = String(1 + Math.floor(random() * 180));
  if (dice < 0.3) return { 'addr:housenumber': house, 'addr:street': `Street ${number % 4_000}` };
  if (dice < 0.5) return { highway: 'crossing', crossing: 'uncontrolled' };
  if (dice < 0.6) return { natural: 'tree', leaf_type: 'broadleaved' };
  if (dice < 0.7) return { power: 'tower' };
  if (dice < 0.8) return { barrier: 'gate', access: 'private' };
  if (dice < 0.9) return { amenity: 'bench', backrest: 'yes' };
  if (dice < 0.96) return { shop: 'convenience', name: `Shop ${number}`, opening_hours: 'Mo-Sa 08:00-20:00' };
  if (dice < 0.98) return { place: 'hamlet', name: `Place ${number}` };
  if (dice < 0.985) return { amenity: 'fuel', name: `Station ${number}`, 'fuel:diesel': 'yes' };
  if (dice < 0.99) return { amenity: 'drinking_water' };
  if (dice < 0.995) return { natural: 'spring' };
  return { man_made: 'water_well', pump: 'manual' };
}

function wayTags(random: () => number, number: number): Tags {
  const dice = random();
  if (dice < 0.62) return { building: 'yes' };
  if (dice < 0.74) return { highway: 'residential', name: `Street ${number % 4_000}`, surface: 'asphalt' };
  if (dice < 0.82) return { highway: 'track', tracktype: 'grade3' };
  if (dice < 0.87) return { highway: 'tertiary', name: `Road ${number % 900}`, maxspeed: '80' };
  if (dice < 0.93) return { landuse: 'farmland' };
  if (dice < 0.99) return { natural: 'wood', leaf_type: 'needleleaved' };
  if (dice < 0.9998) return { amenity: 'parking', access: 'yes' };
  return { amenity: 'fuel', building: 'yes', name: `Station ${number}` };
}

/**
 * Writes a made-up extract of about `bytes` bytes, unless it is there already, and gives its path. The content depends
 * on the size alone; versions and times are written as public extracts have them.
 */
export function syntheticPbf(bytes: number): string {
  const path = `${FOLDER}synthetic-${Math.round(bytes / 1e6)}mb.osm.pbf`;
  if (existsSync(path)) return path;
  mkdirSync(dirname(path), { recursive: true });
  const fd = openSync(`${path}.part`, 'w');
  let written = 0;
  const encoder = new PbfEncoder(
    (piece) => {
      writeSync(fd, piece);
      written += piece.length;
    },
    [10, 20, 20, 30],
    { optionalFeatures: ['Sort.Type_then_ID'] },
  );
  const random = seeded(20);
  const nodeCount = writeNodes(encoder, random, () => written < bytes * NODE_SHARE);
  const wayCount = writeWays(encoder, random, nodeCount, () => written < bytes * WAY_SHARE);
  writeRelations(encoder, random, wayCount, () => written < bytes);
  encoder.end();
  closeSync(fd);
  renameSync(`${path}.part`, path);
  return path;
}

export const sizeMb = (path: string): number => statSync(path).size / 1e6;

const timeOf = (random: () => number) =>
  `20${10 + Math.floor(random() * 15)}-0${1 + Math.floor(random() * 9)}-1${Math.floor(random() * 10)}T12:30:00Z`;

function writeNodes(encoder: PbfEncoder, random: () => number, more: () => boolean): number {
  let lon = 15;
  let lat = 25;
  let timestamp = '2015-01-01T00:00:00Z';
  let index = 0;
  for (; more(); index += 1) {
    if (index % 2_000 === 0) {
      lon = 10.1 + random() * 9.8;
      lat = 20.1 + random() * 9.8;
    }
    // One editing after another: runs of nodes share their time.
    if (index % 40 === 0) timestamp = timeOf(random);
    lon += (random() - 0.5) * 0.004;
    lat += (random() - 0.5) * 0.004;
    encoder.add({
      type: 'node',
      id: nodeIdOf(index),
      lon,
      lat,
      version: 1 + Math.floor(random() * random() * 6),
      timestamp,
      ...(random() < TAGGED ? { tags: nodeTags(random, index) } : {}),
    });
  }
  return index;
}

function writeWays(
  encoder: PbfEncoder,
  random: () => number,
  nodeCount: number,
  more: () => boolean,
): number {
  let index = 0;
  for (; more(); index += 1) {
    const start = (index * NODES_PER_WAY) % (nodeCount - 30);
    const length = 5 + Math.floor(random() * 9);
    const nodes = Array.from({ length }, (_, step) => nodeIdOf(start + step));
    if (random() < 0.6) nodes.push(nodes[0]!);
    encoder.add({
      type: 'way',
      id: 5_000 + index * 3,
      nodes,
      version: 1 + Math.floor(random() * 4),
      timestamp: timeOf(random),
      tags: wayTags(random, index),
    });
  }
  return index;
}

function writeRelations(
  encoder: PbfEncoder,
  random: () => number,
  wayCount: number,
  more: () => boolean,
): void {
  for (let index = 0; more(); index += 1) {
    const start = Math.floor(random() * (wayCount - 40));
    const members = Array.from({ length: 3 + Math.floor(random() * 12) }, (_, step) => ({
      type: 'way' as const,
      ref: 5_000 + (start + step) * 3,
      role: step === 0 ? 'outer' : 'inner',
    }));
    const tags: Tags =
      random() < 0.0001
        ? { type: 'multipolygon', amenity: 'fuel' }
        : { type: 'multipolygon', landuse: 'forest' };
    encoder.add({ type: 'relation', id: 900 + index, members, version: 2, timestamp: timeOf(random), tags });
  }
}
