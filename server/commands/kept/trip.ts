import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { loadTrip } from '../../app/load-trip.ts';
import { VERDICT_WORDS } from '../../app/text/lines/figures.ts';
import { plain } from '../../app/text/lines/plain.ts';
import { left, right, tableText } from '../../app/text/lines/table-text.ts';
import { InputProblem, type Outcome, refused } from '../../core/input/problem.ts';
import { DEMO_EXTRACT } from '../../io/demo-files.ts';
import { dataFolder } from '../../store/data-folder.ts';
import type { Store } from '../../store/library/store.ts';
import { KeepingFileSet } from '../../store/maps/keeping-file-set.ts';
import { packMaps } from '../../store/maps/trip-maps.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import { tripFileName, tripFileText } from '../../store/trip-file/write-trip-file.ts';
import { column } from '../../words/en/printed/shared/columns.ts';
import { openTripFile } from '../../work/open-trip-file.ts';
import type { Command } from '../command.ts';
import { jsonLine } from '../json-line.ts';
import { tripOf, withStore } from '../kept-inputs.ts';
import { refuse } from '../refuse.ts';
import { type KeptWords, oneOf, readKeptWords } from './words-of.ts';

const VERBS = 'list, export or import';

const help = () => `npm run -s drystage -- trip list [--json] | export NAME | import FILE

Trips that are kept: gaps, plan and compare take the name of one in place of a route.

  list          those that are kept, the last changed first, with what their last analysis came to
  export NAME   writes a trip, by its name or id, as one file into this folder: NAME.drystage.json, which needs no extract
  import FILE   keeps the trip of such a file
  --name NAME   with export: the file to write; with import: what the trip is called
  --json        with list: all that is known of them as JSON
  --help        this text

They are kept in ${dataFolder()} (DRYSTAGE_DATA chooses another folder).
Exit status as of gaps.
`;

/** Trips that are kept. */
export const trip: Command = async (words) => {
  const read = readKeptWords(words, VERBS);
  if (!read.ok) return read;
  const { verb } = read.value;
  if (verb === null) return { ok: true, value: help() };
  if (verb === 'list') return list(read.value);
  if (verb === 'export') return exportTrip(read.value);
  if (verb === 'import') return importTrip(read.value);
  return refuse(verb, 'nothing that can be done with trips', VERBS);
};

async function list({ json }: KeptWords): Promise<Outcome<string>> {
  const [trips, why] = await withStore((store) => {
    store.lookOver();
    return [store.trips(), store.state.why];
  });
  const untold = why === null ? '' : `${plain(why)}\n`;
  if (json) return { ok: true, value: jsonLine({ trips: trips.map(({ mapsRevision: _, ...one }) => one) }) };
  if (trips.length === 0) return { ok: true, value: `No trips are kept.\n${untold}` };
  const rows = trips.map(({ name, changedAt, results, id }) => [
    plain(name),
    `${changedAt.slice(0, 16).replace('T', ' ')}`,
    results === null ? '' : results.lengthKm.toFixed(0),
    results === null ? '' : VERDICT_WORDS[results.fuel.verdict],
    results === null ? '' : VERDICT_WORDS[results.water.verdict],
    id,
  ]);
  const columns = [
    left(column('name')),
    left(column('changed (UTC)')),
    right(column('length', 'km')),
    left(column('fuel')),
    left(column('water')),
    left(column('id')),
  ];
  return { ok: true, value: `${tableText(columns, rows).join('\n')}\n${untold}` };
}

async function exportTrip(words: KeptWords): Promise<Outcome<string>> {
  const name = oneOf(words, 'the name of a kept trip');
  if (!name.ok) return name;
  return withStore(async (store) => {
    const kept = tripOf(store, name.value);
    if (kept === null)
      return refuse(name.value, 'no kept trip of that name', 'one that drystage trip list shows');
    const path = words.name ?? tripFileName(kept.name);
    const text = await textOf(store, kept);
    return written(path, text);
  });
}

async function textOf({ driver }: Store, { id, route, ...kept }: StoredTrip): Promise<string> {
  const bytes = driver.trips.route(id);
  if (bytes === null) throw new Error(`the trip ${id} has no route`);
  const { name, notes, notice, rig, trip: said } = kept;
  const maps = driver.trips.maps(id) ?? (await demoMaps(bytes, route.fileName));
  return tripFileText({
    ...{ name, notes, notice, rig, trip: said, maps },
    route: { fileName: route.fileName, bytes },
    written: new Date().toISOString(),
  });
}

/** What the demo's own extract shows near its route. */
async function demoMaps(route: Uint8Array, source: string): Promise<Uint8Array> {
  const files = new KeepingFileSet({ route });
  const request = { route: { path: '', source }, extracts: [DEMO_EXTRACT], withGround: true, notice: null };
  const loaded = await loadTrip(request, files);
  if (!loaded.ok) throw new InputProblem(loaded.problem);
  return packMaps(files.maps(loaded.value));
}

/** Writes a file that is not there yet. */
async function written(path: string, text: string): Promise<Outcome<string>> {
  try {
    await writeFile(path, text, { flag: 'wx' });
    return { ok: true, value: `${path}\n` };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    const came =
      code === 'EEXIST' ? 'a file that is there already' : `a file that cannot be written (${code})`;
    const remedy = 'Give another with --name';
    return refused({ code: 'file-unreadable', source: path, came, expected: 'a free name', remedy });
  }
}

async function importTrip(words: KeptWords): Promise<Outcome<string>> {
  const path = oneOf(words, "the path of a trip's file");
  if (!path.ok) return path;
  const file = await openTripFile({ path: path.value, source: path.value });
  if (!file.ok) return file;
  const { route, extracts, ...parts } = file.value;
  const hash = createHash('sha256').update(route.bytes).digest('hex');
  const added = await withStore((store) =>
    store.addTrip({
      ...parts,
      name: words.name ?? parts.name,
      route: { ...route, hash },
      extracts: extracts.map((name) => ({ id: null, name })),
      beginning: `Opened from ${path.value}`,
    }),
  );
  return { ok: true, value: `Kept as "${plain(added.name)}" (${added.id}).\n` };
}
