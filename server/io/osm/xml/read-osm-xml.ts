import type { Bbox } from '../../../contract/common.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { RawExtract, ReadOptions } from '../extract/raw-extract.ts';
import { DeclaredBounds } from '../extract/whole-file/declared-bounds.ts';
import { osmPapers, type PapersWritten } from '../extract/whole-file/papers.ts';
import { incompleteCaution, tellsOfFailure } from '../extract/whole-file/remark.ts';
import { type EachElement, filterElements } from '../keep/filter-elements.ts';
import type { ByteSource } from '../source/byte-source.ts';
import { parseOsmXml } from './osm-xml-parser.ts';

/** Passes that a file with areas takes; progress is told against these until there are more. */
const USUAL_PASSES = 2;

/**
 * Reads OSM XML in passes over the file, so that memory holds only what concerns supply.
 * Throws InputProblem as `parseOsmXml` and the byte source do.
 */
export async function readOsmXml(bytes: ByteSource, options: ReadOptions): Promise<RawExtract> {
  const bounds = new DeclaredBounds();
  const cautions: Caution[] = [];
  const written: PapersWritten = {};
  let incomplete = false;
  let pass = 0;
  const each: EachElement = async (visit) => {
    const done = pass * bytes.fileBytes;
    pass += 1;
    const total = Math.max(pass, USUAL_PASSES) * bytes.fileBytes;
    const isFirst = pass === 1;
    const pieces = bytes.open((read) => options.onProgress?.(done + read, total));
    await parseOsmXml(pieces, options.source, {
      element: visit,
      ...(isFirst && {
        bounds: (box: Bbox) => bounds.add(box),
        remark: (text: string) => {
          if (!tellsOfFailure(text)) return;
          incomplete = true;
          cautions.push(incompleteCaution(options.source, text));
        },
        papers: ({ asOf, attribution, licence }: PapersWritten) => {
          written.asOf ??= asOf;
          written.attribution ??= attribution;
          written.licence ??= licence;
        },
        noVersion: () => {
          cautions.push({ code: 'osm-version-missing', facts: { source: options.source } });
        },
      }),
    });
  };
  const { ground, near } = options;
  const filtered = await filterElements(each, { ground, near, wantsHull: () => !bounds.any });
  return {
    source: options.source,
    format: 'osm-xml',
    papers: osmPapers(written),
    ...filtered,
    features: [],
    bounds: incomplete ? null : bounds.first,
    ...(!incomplete && bounds.others.length > 0 && { moreBounds: bounds.others }),
    hull: incomplete || bounds.any ? null : filtered.hull,
    cautions: [...cautions, ...bounds.cautions(options.source), ...filtered.cautions],
  };
}
