import type { Commodity, Evidence } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';
import type { FillingTime, WaterFit, WaterLack, WaterRemark } from './rig/treatment-waters.ts';
import type { BarrierKind, ClosedLand } from './said/barriers.ts';
import type { NoFacts, Said } from './said/said.ts';

/** Tags as OSM writes them: "access=private". */
interface Tagged {
  readonly tags: readonly string[];
}

/** An ISO date. */
interface Dated {
  readonly on: string;
}

/** Who said something, how they are asked again, what they said; as far as it is told. */
export interface SaidBy {
  readonly by?: string;
  readonly phone?: string;
  readonly words?: string;
}

/** Something that the user noted on a day. */
type Noted = Dated & SaidBy;

/** What treating says of a water. */
interface Treated<Detail> {
  readonly detail: Detail;
}

/** What one finding behind each reason of a supply has to say. */
export interface SupplyFindings {
  'reported-out': Noted & { readonly until?: string };
  'out-of-use': Tagged;
  closed: Tagged;
  broken: Tagged;
  'not-public': Tagged;
  'permit-needed': Tagged;
  /** `to` where it is judged for several days. */
  'out-of-season': { season: string; from: string; to: string | null };
  /** A supply of the user's own that comes after one may be there. */
  'not-there-yet': { from: string; earliest: string | null };
  /** A point of the user's own that is gone again before one may be there. */
  'no-longer-there': { until: string; latest: string | null };
  'no-opening-found': { hours: string; earliest: string; latest: string };
  'no-pump': Tagged;
  'fuel-not-sold': Tagged;
  'grade-below-engine': Tagged;
  'blend-beyond-engine': Tagged;
  'for-aircraft': { tags?: readonly string[] };
  'for-boats': { tags?: readonly string[] };
  'for-trains': Tagged;
  'tags-contradict': Tagged | { between: 'mappings' };
  'for-fire-fighting': NoFacts;
  'for-animals': NoFacts;
  decorative: NoFacts;
  'not-fit': Tagged;
  salty: Tagged;
  untreated: Tagged;
  'not-controlled': Tagged;
  'not-stated-fit': NoFacts;
  'fit-on-condition': Tagged;
  'fit-unclear': Tagged;
  'salt-unknown': NoFacts;
  'minerals-unknown': NoFacts;
  'salt-found': Noted;
  'line-lacks': Treated<WaterLack>;
  'use-unknown': NoFacts;

  'never-implied': { fuel: FuelKind };
  'other-fuels-listed': Tagged;
  'grade-not-sold': Tagged;
  'fuel-kind-unknown': NoFacts;
  'fuel-unclear': Tagged;
  'fuel-may-not-suit': Tagged;
  'lorries-only': Tagged;
  'not-for-cars': Tagged;
  'members-only': Tagged;
  'access-unclear': Tagged;
  'hard-to-fill': Tagged;
  'status-unclear': Tagged;
  /** Words of mappers, as they stand in a tag. */
  'words-deny': { key: string; quote: string };
  'may-be-dry': Tagged;
  'season-unknown': { season: string; dated: boolean };
  /** `unreadable`: the text cannot be read; else it does not tell. */
  'hours-unread': { hours: string; unreadable: boolean };
  stale: Dated;
  undated: NoFacts;
  'gone-in-newer': { source: string };
  /** On land that is not open to everybody, mapped as an object of that id. */
  'on-closed-ground': { land: ClosedLand; name: string | null; id: string };
  /** A barrier lies between it and the route, or no road leads to it. */
  'no-way-across': { across: BarrierKind; name: string | null } | { across: 'no-road' };
  /** A supply of the user's own: so much is there. */
  'laid-litres': { litres: number };
  /** No more than so much is to be had, as the user was told. */
  'litres-told': Noted & { readonly litres: number };
  /** A point of the user's own. */
  'own-point': Noted;
  /** What the user says that the map has wrong. */
  corrected: Noted & {
    readonly fuels?: readonly FuelKind[];
    readonly grade?: 'drinking' | 'treatable' | 'washing';
    readonly hours?: string;
  };
  'evidence-below': { evidence: Evidence; commodity: Commodity; from: Evidence };

  'tags-differ': { id: string; keys: readonly string[] };
  /** After a term of days, or on the day told. */
  'confirmation-expired': { on: string } & ({ days: number } | { until: string });
  'confirmation-ahead': Dated;
  'confirmation-undated': Dated;
  'confirmation-not-yet': { on: string; from: string };

  confirmed: Noted;
  /** Confirmed long before the departure: ask again from that day on. */
  'confirm-again': { on: string; from: string };
  'confirmed-against-tags': { against: readonly SupplyReason[] };
  'class-by-tags': NoFacts;
  'treat-everything': NoFacts;
  'made-fit': Treated<WaterFit>;
  'treated-as-far-as-known': Treated<WaterRemark>;
  'salt-noted': Noted;
  'time-to-fill': Treated<FillingTime>;
  'in-season': { season: string };
  'customers-only': Tagged;
  'access-unknown': Tagged;
  'lorry-pump': Tagged;
  'diesel-kin': Tagged;
  'ethanol-blend': Tagged;
  'low-octane': Tagged;
  'grade-not-stated': Tagged;
  'powered-pump': Tagged;
  fee: Tagged;
  'opening-hours': { hours: string };
  /** It lies farther off the route than what lies between is looked at. */
  'way-not-looked-at': { overM: number };
  'check-date-ahead': Tagged;
  'mapper-doubt': { note: string };
}

export type SupplyReasonCode = keyof SupplyFindings;

/** Codes that only tags have to be known for. */
export type TagReasonCode = {
  [Code in SupplyReasonCode]: SupplyFindings[Code] extends Tagged ? Code : never;
}[SupplyReasonCode];

/** Codes for which nothing has to be known. */
export type PlainReasonCode = {
  [Code in SupplyReasonCode]: NoFacts extends SupplyFindings[Code] ? Code : never;
}[SupplyReasonCode];

/** A reason is told with all the findings of its code. */
export type SupplyReasons = {
  readonly [Code in SupplyReasonCode]: { readonly findings: readonly SupplyFindings[Code][] };
};
export type SupplyReason = Said<SupplyReasons>;
