import type { HaltSupply, PlanEdge, SheetHalt } from '../../../contract/plan.ts';
import { wrapLongitude } from '../../../core/geodesy/longitude.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { printed } from '../../../words/printed.ts';
import { plain, shortened } from '../../text/lines/plain.ts';
import { placeText } from '../../text/lines/rounding.ts';

const stopWords = () => printed().paper.tables.stops;

/** Names are cut where they would take more than a line or two (ours). */
const NAME_LENGTH = 60;

/** A text from files, fit for a line. */
export const nameText = (name: string): string => shortened(plain(name), NAME_LENGTH);

/** A place by its name, or by what it is. */
export const edgeName = ({ name, kind }: Pick<PlanEdge, 'name' | 'kind'>): string =>
  nameText(name ?? printed().lines.unnamedPlaces[kind]);

/** The same with its kilometre. */
export const edgeText = (edge: Pick<PlanEdge, 'name' | 'kind' | 'atKm'>): string =>
  printed().paper.answer.named(edgeName(edge), placeText(edge.atKm));

/** A co-ordinate in degrees, a metre exact: "33.84012 S, 85.20034 E". */
export function pointText(lon: number, lat: number): string {
  const wrapped = wrapLongitude(lon);
  const degrees = (value: number, plus: string, minus: string) =>
    `${Math.abs(value).toFixed(5)} ${value < 0 ? minus : plus}`;
  return stopWords().point(
    degrees(lat, stopWords().north, stopWords().south),
    degrees(wrapped, stopWords().east, stopWords().west),
  );
}

/** The halts of a plan with the number that each has in the table, on the strip and on the map. */
export const numbered = (halts: readonly SheetHalt[]): { number: number; halt: SheetHalt }[] =>
  halts.map((halt, index) => ({ number: index + 1, halt }));

/** What is done at a halt, in the order of the road. */
export const suppliesOf = (halt: SheetHalt) =>
  COMMODITIES.flatMap((commodity) => {
    const supply = halt[commodity];
    return supply === null ? [] : [{ commodity, supply }];
  }).sort((a, b) => a.supply.at.atKm - b.supply.at.atKm);

type Contact = Pick<NonNullable<HaltSupply['contact']>, 'phone' | 'openingHours'> | null;

/** Whom to ask and when it is open; what is not known is said. Null: a supply of one's own. */
export function contactFacts(contact: Contact): string[] {
  if (contact === null) return [stopWords().own];
  const { phone, openingHours } = contact;
  return [
    phone === null ? stopWords().noTelephone : stopWords().telephone(plain(phone)),
    openingHours === null ? stopWords().noHours : stopWords().hours(plain(openingHours)),
  ];
}

/** The same with what is known alone. */
export function knownFacts(contact: Contact): string[] {
  if (contact === null) return [stopWords().own];
  const { phone, openingHours } = contact;
  return [
    ...(phone === null ? [] : [stopWords().telephone(plain(phone))]),
    ...(openingHours === null ? [] : [stopWords().hours(plain(openingHours))]),
  ];
}
