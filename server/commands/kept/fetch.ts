import { basename } from 'node:path';
import { routeProblem } from '../../app/route-problem.ts';
import { plain } from '../../app/text/lines/plain.ts';
import { ProgressLine } from '../../app/text/lines/progress-line.ts';
import { type OverpassQuestion, WIDEST_CORRIDOR_KM } from '../../contract/answers/overpass.ts';
import type { Bbox } from '../../contract/common.ts';
import { CORRIDOR_KM, PART, SPARSE_STEP_KM } from '../../core/defaults/trip-defaults.ts';
import type { Outcome } from '../../core/input/problem.ts';
import type { RouteDocument } from '../../core/input/sources.ts';
import { metresOf } from '../../core/quantity/rates.ts';
import { routeOf } from '../../core/route/build/route-of.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { readGpxBytes } from '../../io/gpx/read-gpx.ts';
import type { Interpreter } from '../../io/overpass/ask.ts';
import { corridorBoxes } from '../../io/overpass/corridor.ts';
import type { FetchState } from '../../io/overpass/fetch-corridor.ts';
import { interpreterOf } from '../../io/overpass/interpreter.ts';
import { mergeChunks } from '../../io/overpass/merge-chunks.ts';
import { questionOf } from '../../io/overpass/question.ts';
import { caught, tripFileSet } from '../../io/trip-file-set.ts';
import { dataFolder } from '../../store/data-folder.ts';
import { answersFolder } from '../../store/extracts/answers-folder.ts';
import { fetchExtract } from '../../store/extracts/fetch-extract.ts';
import { ingest } from '../../store/extracts/ingest.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonLine } from '../json-line.ts';
import { isKeptTrip, keptRoute, withStore } from '../kept-inputs.ts';
import { refuse } from '../refuse.ts';
import { countsText } from './counts-text.ts';
import { type KeptWords, oneOf } from './words-of.ts';

/** Says what would be asked for a route's corridor, or asks it. */
export async function fetchCommand(words: KeptWords, io: CommandIo): Promise<Outcome<string>> {
  const route = oneOf(words, 'a route: a GPX file or the name of a kept trip');
  if (!route.ok) return route;
  const { overpass, yes } = words.fetch;
  const interpreter = interpreterOf(overpass ?? undefined);
  if (!interpreter.ok) return interpreter;
  const read = await readRoute(route.value);
  if (!read.ok) return read;
  const corridorKm = corridorOf(words, read.value.corridorKm);
  if (!corridorKm.ok) return corridorKm;
  const boxes = corridorBoxes(read.value.line, corridorKm.value);
  if (yes) return fetchNow(words, { io, interpreter: interpreter.value, boxes, route: route.value });
  const asking = { interpreter: interpreter.value, boxes, corridorKm: corridorKm.value };
  const question = await questionOf(asking, answersFolder(dataFolder()));
  return { ok: true, value: words.json ? jsonLine(question) : questionText(question) };
}

/** A route's line, and how wide its trip looks. */
interface RouteToAsk {
  line: RouteLine;
  corridorKm: number;
}

async function readRoute(route: string): Promise<Outcome<RouteToAsk>> {
  const kept = isKeptTrip(route) ? keptRoute(route) : null;
  const document: Outcome<RouteDocument> =
    kept === null
      ? await tripFileSet.readRoute({ path: route, source: route }, {})
      : await caught(() => readGpxBytes(kept.bytes, kept.fileName));
  if (!document.ok) return document;
  const line = routeOf(document.value, { part: PART, sparseStepM: metresOf(SPARSE_STEP_KM) });
  if (!line.ok) return { ok: false, problem: routeProblem(line.refusal, route) };
  return { ok: true, value: { line: line.value, corridorKm: kept?.corridorKm ?? CORRIDOR_KM } };
}

function corridorOf({ fetch: { corridor } }: KeptWords, usual: number): Outcome<number> {
  const km = corridor === null ? usual : Number(corridor);
  if (km > 0 && km <= WIDEST_CORRIDOR_KM) return { ok: true, value: km };
  const expected = `kilometres above 0 and at most ${WIDEST_CORRIDOR_KM}`;
  return refuse('--corridor', `"${corridor ?? km}"`, expected);
}

const questionText = ({
  address,
  userAgent,
  corridorKm,
  requests,
  answered,
  query,
}: OverpassQuestion): string =>
  `Would ask ${address} as ${userAgent}${userAgent.includes('(+') ? '' : ', which names nobody to write to: set DRYSTAGE_CONTACT'}:
  corridor  ${corridorKm} km on either side of the route, in boxes
  queries   ${requests}, one at a time; ${answered} of them are answered already
  text      of the first; the others have another box in it:

${query}
Nothing was sent. Add --yes to ask.
`;

interface FetchNow {
  io: CommandIo;
  interpreter: Interpreter;
  boxes: readonly Bbox[];
  route: string;
}

async function fetchNow(
  { name, json }: KeptWords,
  { io, interpreter, boxes, route }: FetchNow,
): Promise<Outcome<string>> {
  if (name === null) return refuse('--name', 'no name', 'what the extract is to be called: --name NAME');
  const progress = io.terminal ? new ProgressLine(io.err, Date.now) : null;
  const plan = { interpreter, boxes, name, fileName: `corridor of ${basename(route)}` };
  const kept = await withStore(({ extracts }) =>
    fetchExtract(extracts, plan, {
      signal: new AbortController().signal,
      onState: (state) => progress?.showWork(stateText(interpreter, state)),
      merge: mergeChunks,
      read: (path) => ingest(path, name, {}),
    }).finally(() => progress?.clear()),
  );
  if (json) return { ok: true, value: jsonLine(kept) };
  return { ok: true, value: `Kept as "${plain(kept.name)}": ${countsText(kept)}.\n` };
}

function stateText({ address }: Interpreter, { done, chunks, waiting }: FetchState): string {
  const asked = `asking ${address.host}: ${done} of ${chunks}`;
  return waiting === null ? asked : `${asked}, waiting ${waiting.seconds} s (${waiting.detail})`;
}
