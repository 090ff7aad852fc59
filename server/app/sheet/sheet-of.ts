import { printed } from '../../words/printed.ts';
import type { ExportPack } from '../export/pack.ts';
import { plain } from '../text/lines/plain.ts';
import { columnUnit } from '../text/lines/rounding.ts';
import { mapPicture } from './drawing/map.ts';
import { stripPicture } from './drawing/strip.ts';
import type { Block, Sheet, SheetPart, SheetPartName } from './model/model.ts';
import { answerBlocks, waysOutBlocks } from './parts/answer.ts';
import { dayBlocks } from './parts/days.ts';
import { gaugeBlocks } from './parts/gauge.ts';
import { homeBlocks } from './parts/home.ts';
import { cautionBlocks, checkBlocks, dataBlocks, whatIfBlocks } from './parts/lists.ts';
import { stopBlocks } from './parts/stops.ts';
import { troubleBlocks } from './parts/trouble.ts';

const words = () => printed().paper.page;

/** Room for the pictures below the answer on the first page, of A4 as of Letter. */
const PICTURE_HEIGHT_MM = 128;

/**
 * The sheet of a planned trip: all that is read on the way, in the order in which it is needed, and a page for somebody
 * at home. Every figure is one of the plan, the gauge or the what-ifs, rounded to the side that one can rely on.
 */
export function sheetOf(pack: ExportPack): Sheet {
  const { planned, notice, made } = pack;
  const { analysis } = planned;
  const departure = analysis.trip.departure;
  const facts = [
    plain(pack.route.name),
    ...(departure === undefined ? [] : [words().leaves(departure.slice(0, 10))]),
    ...(analysis.rig.name === undefined ? [] : [plain(analysis.rig.name)]),
  ];
  const data = analysis.extracts.map(({ asOf }) => asOf?.slice(0, 10) ?? words().undated);
  return {
    title: plain(pack.route.name),
    head: words().head(facts),
    dates: words().dates(made, [...new Set(data)]),
    foot: [words().foot, ...(notice === null ? [] : [plain(notice)])].join(' '),
    parts: [
      { name: 'answer' as const, heading: null, startsPage: false, blocks: firstBlocks(pack) },
      headed('trouble', troubleBlocks(planned)),
      headed('stops', stopBlocks(planned)),
      headed('gauge', gaugeBlocks(planned)),
      headed('days', dayBlocks(planned)),
      headed('what-ifs', whatIfBlocks(planned)),
      headed('check', checkBlocks(planned)),
      headed('cautions', cautionBlocks(planned)),
      headed('data', dataBlocks(planned)),
      { ...headed('home', homeBlocks(pack)), startsPage: true },
    ]
      .filter(({ blocks }) => blocks.length > 0)
      .map((part) => ({ ...part, blocks: part.blocks.map(inReadersUnits) })),
  };
}

/** A table with the units over its columns that its figures are told in. */
const inReadersUnits = (block: Block): Block =>
  block.kind === 'table'
    ? { ...block, columns: block.columns.map((column) => ({ ...column, unit: columnUnit(column.unit) })) }
    : block;

const firstBlocks = (pack: ExportPack): Block[] => [
  ...answerBlocks(pack.planned),
  ...waysOutBlocks(pack.planned),
  {
    kind: 'pictures',
    pictures: [mapPicture(pack, PICTURE_HEIGHT_MM), stripPicture(pack.planned, PICTURE_HEIGHT_MM)],
  },
];

const headed = (name: Exclude<SheetPartName, 'answer'>, blocks: readonly Block[]): SheetPart => ({
  name,
  heading: words().headings[name],
  startsPage: false,
  blocks,
});
