import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { packOf } from '../app/export/pack.ts';
import {
  EXPORT_FILES,
  type ExportEnding,
  isExportEnding,
  isForReaders,
} from '../app/take-along/export-file.ts';
import { today } from '../app/today.ts';
import { PAPERS, type Paper } from '../contract/answers/sheet.ts';
import type { Units } from '../contract/answers/units.ts';
import { type Outcome, refused } from '../core/input/problem.ts';
import { cabProgram } from '../io/cab-program.ts';
import { loadPdfPrinter } from '../io/pdf/pdf-printer.ts';
import { LANGUAGES, type Language } from '../words/parts/language.ts';
import { UNIT_NAMES, UNIT_PRESETS, unitsFromText } from '../words/parts/reader-units.ts';
import { measuring, speaking } from '../work/speaking.ts';
import type { Command } from './command.ts';
import type { CommandIo } from './command-io.ts';
import { isKeptTrip } from './kept-inputs.ts';
import { ofRoute } from './load-files.ts';
import { planBeforeTerminal } from './plan.ts';
import { readTrip } from './read-trip.ts';
import { refuse, refuseOption } from './refuse.ts';
import { readTripArguments, type TripArguments } from './trip-arguments.ts';

const HELP = `npm run -s drystage -- export ROUTE.gpx --supply EXTRACT [--supply EXTRACT ...] --rig RIG.yaml [--trip TRIP.yaml] [--part PART] --to FILE

Makes the carry plan and writes it as a file to take along; the ending of its name decides which:

  .html      one file for a telephone, with the cab view: whether one can go on or back from a place with what is
             aboard; works offline, keeps what is entered, needs a browser of 2022 or newer
  .pdf       the sheet to print, black on white: answer, small map, strip, stops, gauge, days, what is not borne,
             list to check, and a page for somebody at home
  .gpx       the route, stops, turn-back points, places to pour a can, nights and cautions as waypoints (GPX 1.1)
  .geojson   the same (RFC 7946)
  .csv       the same places as a table, units in its heads
  .ics       the days and what is to be confirmed by when, as a calendar (RFC 5545); needs the trip's departure

  ROUTE.gpx, --supply, --rig, --trip, --part   as of gaps
  --to FILE                                    where to write; an existing file is only replaced with --replace
  --paper a4|letter                            the size of the sheet's pages, a4 where it is left out; of .pdf alone
  --units UNITS                                what .html and .pdf tell figures in: metric (where it is left out), us, imperial,
                                               or each unit on its own: mi,L,kg,C,m,kPa (US-gal and imp-gal for gallons)
  --language en|de                             the language of .html and .pdf, English where it is left out
  --replace                                    replaces the file
  --help                                       this text

Exit status as of gaps.
`;

interface Target {
  readonly file: string;
  readonly ending: ExportEnding;
  readonly replace: boolean;
  readonly paper: Paper;
  readonly units: Units;
  readonly language: Language;
}

const ENDINGS = Object.keys(EXPORT_FILES)
  .map((ending) => `.${ending}`)
  .join(', ');

/** The carry plan as a file to take along. */
export const exportTrip: Command = async (words, io) => {
  const told = readTarget(words);
  if (!told.ok) return told;
  const { target, rest } = told.value;
  const args = readTripArguments({ command: 'export', words: rest, mostRigs: 1, isKept: isKeptTrip });
  if (!args.ok) return args;
  if (args.value === null) return { ok: true, value: HELP };
  return target === null
    ? refuse('--to', 'no file to write', `--to FILE, with one of the endings ${ENDINGS}`)
    : write(target, args.value, io);
};

/** Takes the words about the file out; the others are those of every command on a route. */
function readTarget(words: readonly string[]): Outcome<{ target: Target | null; rest: string[] }> {
  const { values, tokens } = parseArgs({
    args: [...words],
    strict: false,
    tokens: true,
    options: {
      to: { type: 'string', multiple: true },
      replace: { type: 'boolean' },
      paper: { type: 'string', multiple: true },
      units: { type: 'string', multiple: true },
      language: { type: 'string', multiple: true },
    },
  });
  const taken = new Set(
    tokens.flatMap((token) => {
      if (token.kind !== 'option' || !OWN_OPTIONS.includes(token.name)) return [];
      return token.inlineValue === false ? [token.index, token.index + 1] : [token.index];
    }),
  );
  const rest = words.filter((_, index) => !taken.has(index));
  const [file, second] = values.to ?? [];
  if (second !== undefined) return refuse('--to', 'several files to write', 'one');
  if (file === undefined) return { ok: true, value: { target: null, rest } };
  if (typeof file !== 'string') return refuseOption(new Error('--to without a file'), '--to FILE');
  const ending = /\.([a-z]+)$/i.exec(file)?.[1]?.toLowerCase() ?? '';
  if (!isExportEnding(ending))
    return refuse('--to', `"${file}"`, `a file with one of the endings ${ENDINGS}`);
  const paper = paperOf(values.paper, ending);
  if (!paper.ok) return paper;
  const units = unitsTold(values.units, ending);
  if (!units.ok) return units;
  const language = languageOf(values.language, ending);
  if (!language.ok) return language;
  const target = {
    ...{ file, ending, replace: values.replace === true },
    ...{ paper: paper.value, units: units.value, language: language.value },
  };
  return { ok: true, value: { target, rest } };
}

const OWN_OPTIONS: readonly string[] = ['to', 'replace', 'paper', 'units', 'language'];

/** The size that is told, once and of a sheet. */
function paperOf(told: readonly unknown[] = [], ending: ExportEnding): Outcome<Paper> {
  const [first, ...more] = told;
  if (first === undefined) return { ok: true, value: 'a4' };
  if (ending !== 'pdf') return refuse('--paper', `a size for .${ending}`, 'it with .pdf alone');
  const paper = PAPERS.find((each) => each === first);
  if (paper === undefined || more.length > 0)
    return refuse('--paper', told.map((each) => `"${each}"`).join(', '), `one of ${PAPERS.join(', ')}`);
  return { ok: true, value: paper };
}

/** The units that are told, once and of a file for people. */
function unitsTold(told: readonly unknown[] = [], ending: ExportEnding): Outcome<Units> {
  const [first, ...more] = told;
  if (first === undefined) return { ok: true, value: UNIT_PRESETS.metric };
  if (!isForReaders(ending))
    return refuse('--units', `units for .${ending}`, 'them with .html and .pdf alone');
  const units = more.length > 0 ? null : unitsFromText(String(first));
  if (units !== null) return { ok: true, value: units };
  return refuse('--units', told.map((each) => `"${each}"`).join(', '), `one list of ${UNIT_NAMES}`);
}

/** The language that is told, once and of a file for people. */
function languageOf(told: readonly unknown[] = [], ending: ExportEnding): Outcome<Language> {
  const [first, ...more] = told;
  if (first === undefined) return { ok: true, value: 'en' };
  if (!isForReaders(ending))
    return refuse('--language', `a language for .${ending}`, 'it with .html and .pdf alone');
  const language = LANGUAGES.find((each) => each === first);
  if (language === undefined || more.length > 0)
    return refuse('--language', told.map((each) => `"${each}"`).join(', '), `one of ${LANGUAGES.join(', ')}`);
  return { ok: true, value: language };
}

const write = (target: Target, args: TripArguments, io: CommandIo): Promise<Outcome<string>> =>
  speaking(target.language, () => measuring(target.units, () => writeFor(target, args, io)));

async function writeFor(target: Target, args: TripArguments, io: CommandIo): Promise<Outcome<string>> {
  const files = await readTrip(args, io);
  if (!files.ok) return files;
  const planned = ofRoute(await planBeforeTerminal(files.value, io, { cab: target.ending === 'html' }), args);
  if (!planned.ok) return planned;
  const pack = ofRoute(packOf(files.value.loaded, planned.value, today()), args);
  if (!pack.ok) return pack;
  const tools = { cabProgram, pdfPrinter: loadPdfPrinter, paper: target.paper };
  const content = await EXPORT_FILES[target.ending](pack.value, tools);
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  try {
    await writeFile(target.file, bytes, { flag: target.replace ? 'w' : 'wx' });
  } catch (error) {
    return unwritten(target.file, error);
  }
  return { ok: true, value: `${target.file}: ${bytes.length} bytes\n` };
}

function unwritten(file: string, error: unknown): Outcome<never> {
  const { code = '' } = error as NodeJS.ErrnoException;
  if (code === 'EEXIST')
    return refused({
      code: 'command-invalid',
      source: file,
      came: 'a file that is there already',
      expected: 'a new name',
      remedy: 'Say another name, or --replace',
    });
  if (code === '') throw error;
  return refused({
    code: 'file-unreadable',
    source: file,
    came: `a file that cannot be written (${code})`,
    expected: 'a folder that can be written to, with room',
    remedy: 'Say another place',
  });
}
