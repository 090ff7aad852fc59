import { isBuiltin } from 'node:module';
import type { Module } from './modules.ts';

/** A part of the house and what of it may be imported from elsewhere. */
interface Layer {
  /** Its folder, or its files where it has none. */
  at: string;
  /** The parts that it may import, beside itself: folders by a slash at the end, or single files. */
  from: readonly string[];
  /** Whether it runs in Node: only then it may import what is built into it. */
  node: boolean;
}

/** What app wants of those that serve it, and takes in. */
const PORTS = [
  'server/app/ports.ts',
  'server/app/loaded-trip.ts',
  'server/app/near-route.ts',
  'server/app/input/',
];
const INNER = ['server/core/', 'server/contract/', 'server/words/'];

/** Arrows point inwards; the first layer that a file lies in holds. */
const LAYERS: readonly Layer[] = [
  { at: 'server/start/', from: [], node: true },
  { at: 'server/contract/', from: [], node: false },
  { at: 'server/core/', from: ['server/contract/'], node: false },
  { at: 'server/words/', from: ['server/core/', 'server/contract/'], node: false },
  { at: 'server/app/', from: INNER, node: false },
  { at: 'server/io/', from: ['server/core/', 'server/contract/', 'server/start/', ...PORTS], node: true },
  { at: 'server/store/', from: ['server/io/', 'server/core/', 'server/contract/', ...PORTS], node: true },
  {
    at: 'server/work/',
    from: ['server/store/', 'server/app/', 'server/io/', 'server/start/', ...INNER],
    node: true,
  },
  {
    at: 'server/http/',
    from: ['server/work/', 'server/store/', 'server/app/', 'server/io/', ...INNER],
    node: true,
  },
  {
    at: 'server/commands/',
    from: ['server/work/', 'server/store/', 'server/app/', 'server/io/', ...INNER],
    node: true,
  },
  { at: 'server/', from: [], node: true },
  { at: 'web/vite.config.ts', from: [], node: true },
  // The same rules on a telephone as on the server: what runs in a file to take along has no server to ask.
  {
    at: 'web/cab/',
    from: ['server/core/', 'server/contract/', 'server/words/cab.ts', 'server/words/parts/'],
    node: false,
  },
  { at: 'web/', from: ['server/contract/', 'server/words/'], node: false },
];

/** The imports against the rules, each in one line. */
export function wrongArrows(modules: ReadonlyMap<string, Module>): string[] {
  return [...modules].flatMap(([path, { files, packages }]) => {
    const layer = LAYERS.find(({ at }) => path.startsWith(at));
    if (layer === undefined) return [`${path} lies in no layer`];
    const allowed = [layer.at, ...layer.from];
    const outside = [...files].filter((file) => !allowed.some((part) => file.startsWith(part)));
    const builtin = layer.node ? [] : [...packages].filter((name) => isBuiltin(name));
    return [...outside, ...builtin].map((target) => `${path} -> ${target}: ${layer.at} may not import it`);
  });
}
