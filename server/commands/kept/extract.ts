import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import { plain } from '../../app/text/lines/plain.ts';
import { ProgressLine } from '../../app/text/lines/progress-line.ts';
import { left, right, tableText } from '../../app/text/lines/table-text.ts';
import { type Outcome, refused } from '../../core/input/problem.ts';
import { dataFolder } from '../../store/data-folder.ts';
import { ingest } from '../../store/extracts/ingest.ts';
import { column } from '../../words/en/printed/shared/columns.ts';
import type { Command } from '../command.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonLine } from '../json-line.ts';
import { withStore } from '../kept-inputs.ts';
import { refuse } from '../refuse.ts';
import { countsText } from './counts-text.ts';
import { fetchCommand } from './fetch.ts';
import { type KeptWords, oneOf, readKeptWords } from './words-of.ts';

const VERBS = 'add, fetch, list or remove';

const help =
  () => `npm run -s drystage -- extract add FILE [--name NAME] | fetch ROUTE --name NAME [--yes] | list [--json] | remove NAME

Keeps extracts for any number of routes: --supply NAME takes them where no file of that name exists.

  add FILE      takes a file in: any that --supply takes; one that is kept already stays as it is
  fetch ROUTE   says what an Overpass server would be asked for the corridor of a route (a GPX file or a kept trip's
                name), and with --yes asks it and keeps the answer
  --name NAME   what it is called, unlike all others; default: the file's name
  --corridor KM with fetch: kilometres on either side of the route; default: the kept trip's, else 5
  --overpass URL  with fetch: the interpreter to ask; default: DRYSTAGE_OVERPASS, else the public one;
                  DRYSTAGE_CONTACT says whom it may write to
  --yes         with fetch: ask; without it nothing is sent
  list          those that are kept, by name, with the date of their data
  remove NAME   keeps one no longer; trips that were read with it stay as they are
  --json        with add, fetch and list: all that is known of them as JSON
  --help        this text

They are kept in ${dataFolder()} (DRYSTAGE_DATA chooses another folder).
Exit status as of gaps.
`;

/** Extracts that are kept. */
export const extract: Command = async (words, io) => {
  const read = readKeptWords(words, VERBS);
  if (!read.ok) return read;
  const { verb } = read.value;
  if (verb === null) return { ok: true, value: help() };
  if (verb === 'add') return add(read.value, io);
  if (verb === 'fetch') return fetchCommand(read.value, io);
  if (verb === 'list') return list(read.value);
  if (verb === 'remove') return remove(read.value);
  return refuse(verb, 'nothing that can be done with extracts', VERBS);
};

async function add(words: KeptWords, io: CommandIo): Promise<Outcome<string>> {
  const path = oneOf(words, 'the path of a file');
  if (!path.ok) return path;
  if (!existsSync(path.value)) {
    const remedy = 'Check the path';
    const parts = { source: path.value, came: 'no such file', expected: 'a file of map data', remedy };
    return refused({ code: 'file-missing', ...parts });
  }
  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const watch = progress === null ? {} : { onProgress: progress.show.bind(progress) };
  const source = path.value;
  const file = { path: source, fileName: basename(source), name: words.name ?? undefined, isOurs: false };
  const before = new Set<string>();
  const kept = await withStore(({ extracts }) => {
    for (const { id } of extracts.all()) before.add(id);
    return extracts.add(file, (copy) => ingest(copy, source, watch)).finally(() => progress?.clear());
  });
  if (words.json) return { ok: true, value: jsonLine(kept) };
  const what = before.has(kept.id) ? 'Kept already as' : 'Kept as';
  return { ok: true, value: `${what} "${plain(kept.name)}": ${countsText(kept)}.\n` };
}

async function list({ json }: KeptWords): Promise<Outcome<string>> {
  const extracts = await withStore((store) => store.extracts.all());
  if (json) return { ok: true, value: jsonLine({ extracts }) };
  if (extracts.length === 0) return { ok: true, value: 'No extracts are kept.\n' };
  const rows = extracts.map((one) => [
    plain(one.name),
    one.asOf?.slice(0, 10) ?? 'unknown',
    String(one.counts.supplies),
    (one.bytes / 1e6).toFixed(1),
    plain(one.fileName),
  ]);
  const columns = [
    left(column('name')),
    left(column('data of')),
    right(column('supplies', '')),
    right(column('size', 'MB')),
    left(column('file')),
  ];
  return { ok: true, value: `${tableText(columns, rows).join('\n')}\n` };
}

async function remove(words: KeptWords): Promise<Outcome<string>> {
  const name = oneOf(words, 'the name of a kept extract');
  if (!name.ok) return name;
  const isGone = await withStore(async ({ extracts }) => {
    const kept = extracts.named(name.value);
    return kept !== null && (await extracts.remove(kept.id));
  });
  if (isGone) return { ok: true, value: `"${plain(name.value)}" is kept no longer.\n` };
  return refuse(name.value, 'no kept extract of that name', 'one that drystage extract list shows');
}
