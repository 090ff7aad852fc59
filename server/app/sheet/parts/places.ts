import type { HaltSupply, PlanEdge, SheetHalt } from '../../../contract/plan.ts';
import { wrapLongitude } from '../../../core/geodesy/longitude.ts';
import { COMMODITIES } from '../../../core/quantity/commodities.ts';
import { PRINTED } from '../../../words/printed.ts';
import { kmText } from '../../export/rounding.ts';
import { plain, shortened } from '../../text/lines/plain.ts';

const { stops: STOPS } = PRINTED.paper.tables;

/** Names are cut where they would take more than a line or two (ours). */
const NAME_LENGTH = 60;

/** A text from files, fit for a line. */
export const nameText = (name: string): string => shortened(plain(name), NAME_LENGTH);

/** A place by its name, or by what it is. */
export const edgeName = ({ name, kind }: Pick<PlanEdge, 'name' | 'kind'>): string =>
  nameText(name ?? PRINTED.lines.unnamedPlaces[kind]);

/** The same with its kilometre. */
export const edgeText = (edge: Pick<PlanEdge, 'name' | 'kind' | 'atKm'>): string =>
  PRINTED.paper.answer.named(edgeName(edge), kmText(edge.atKm));

/** A co-ordinate in degrees, a metre exact: "33.84012 S, 85.20034 E". */
export function pointText(lon: number, lat: number): string {
  const wrapped = wrapLongitude(lon);
  const degrees = (value: number, plus: string, minus: string) =>
    `${Math.abs(value).toFixed(5)} ${value < 0 ? minus : plus}`;
  return STOPS.point(degrees(lat, STOPS.north, STOPS.south), degrees(wrapped, STOPS.east, STOPS.west));
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
  if (contact === null) return [STOPS.own];
  const { phone, openingHours } = contact;
  return [
    phone === null ? STOPS.noTelephone : STOPS.telephone(plain(phone)),
    openingHours === null ? STOPS.noHours : STOPS.hours(plain(openingHours)),
  ];
}

/** The same with what is known alone. */
export function knownFacts(contact: Contact): string[] {
  if (contact === null) return [STOPS.own];
  const { phone, openingHours } = contact;
  return [
    ...(phone === null ? [] : [STOPS.telephone(plain(phone))]),
    ...(openingHours === null ? [] : [STOPS.hours(plain(openingHours))]),
  ];
}
