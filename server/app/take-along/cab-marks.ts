import type { FuelKind } from '../../contract/rig.ts';
import type { CabMark } from '../../core/cab/cab-file.ts';
import { cabWords } from '../../words/cab.ts';
import { wholeAtLeast, wholeNeeded } from '../../words/parts/reader-figures.ts';
import { readerUnits, volumeSign } from '../../words/parts/reader-units.ts';
import { type CommoditySupply, type Mark, marksOf } from '../export/marks.ts';
import type { ExportPack } from '../export/pack.ts';

/**
 * The places to know on the way as the cab view tells them, in the order of the road. Without a plan every stretch between
 * two supplies has a place to turn back: the view reckons its own.
 */
export function cabMarks(pack: ExportPack): CabMark[] {
  const { analysis, plan } = pack.planned;
  const { kind } = analysis.rig.fuel;
  const marks = marksOf(pack).filter((mark) => plan.status === 'found' || mark.kind !== 'turn-back');
  return marks.map((mark) => ({
    kind: mark.kind,
    commodities: mark.commodities,
    atM: mark.atKm * 1000,
    name: nameOf(mark, kind),
    todo: mark.supplies.map((one) => todoOf(one, kind)),
    contact: contactOf(mark),
  }));
}

function nameOf({ kind, commodities, name, words, supplies }: Mark, fuel: FuelKind): string {
  const [first] = supplies;
  const what = commodities.map((commodity) => cabWords().answer.content(commodity, fuel)).join(' + ');
  switch (kind) {
    case 'turn-back':
      return cabWords().lastTurn(what);
    case 'pour':
      return cabWords().pour(what);
    case 'caution':
    case 'reserve':
    case 'dry':
      return words;
    case 'stop':
      return first?.supply.at.name ?? first?.supply.kind ?? name;
    case 'start':
    case 'night':
    case 'end':
      return name;
  }
}

const tellAtLeast = (litres: number): string => `${wholeAtLeast(litres)}\u00a0${volumeSign(readerUnits())}`;
const tellNeeded = (litres: number): string => `${wholeNeeded(litres)}\u00a0${volumeSign(readerUnits())}`;

/** What is done about one commodity: litres to fill rounded up, those that one comes with down. */
function todoOf({ commodity, supply }: CommoditySupply, fuel: FuelKind): string {
  const { arriveL, fillL, leaveL, cansFull } = supply;
  return cabWords().halt({
    what: cabWords().answer.content(commodity, fuel),
    arrive: arriveL === null ? null : tellAtLeast(arriveL),
    fill: fillL > 0 ? tellNeeded(fillL) : null,
    letGo: fillL < 0 ? tellNeeded(-fillL) : null,
    leave: leaveL === null ? null : tellNeeded(leaveL),
    cans: cansFull,
  });
}

/** Of the first supply there that can be asked. */
function contactOf({ supplies }: Mark): CabMark['contact'] {
  const [contact] = supplies.flatMap(({ supply }) => supply.contact ?? []);
  return contact === undefined ? null : { phone: contact.phone, openingHours: contact.openingHours };
}
