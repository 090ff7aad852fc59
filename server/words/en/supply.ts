import type { BarrierKind, ClosedLand } from '../../core/phrases/said/barriers.ts';
import type {
  SupplyFindings,
  SupplyReason,
  SupplyReasonCode,
  SupplyReasons,
} from '../../core/phrases/supply.ts';
import type { Say, Sayings } from '../parts/catalogue.ts';
import { figure, kmOf } from '../parts/figures.ts';
import { byTags, dates, details, each, tagList } from '../parts/findings.ts';
import { joined, type Parts, parts } from '../parts/part.ts';
import { correction, expiry, noted } from './noted.ts';
import { FUEL_WORDS } from './rig/fuel-words.ts';

/** A reason inside another. */
const reasonParts = ({ code, facts }: SupplyReason, say: Say): Parts =>
  (SUPPLY_REASONS[code] as Sayings<SupplyReasons>[SupplyReasonCode] as (facts: unknown, say: Say) => Parts)(
    facts,
    say,
  );

const CLOSED_LANDS: Record<ClosedLand, string> = {
  military: 'military land',
  prison: 'a prison',
  airfield: 'an airfield',
  closed: 'land closed to the public',
};

const BARRIERS: Record<BarrierKind, string> = {
  river: 'a river',
  canal: 'a canal',
  railway: 'a railway',
  coast: 'a coast',
  border: 'a national border',
};

/** What lies between, with its name where it has one. */
function obstacle(finding: SupplyFindings['no-way-across']): Parts {
  if (finding.across === 'no-road') return parts`no mapped road near it`;
  const { across, name } = finding;
  return parts`${BARRIERS[across]}${name === null ? '' : ` (${name})`} between it and the route`;
}

/** Why a supply does not count, or what to know of it: what is known, then what to do. */
export const SUPPLY_REASONS: Sayings<SupplyReasons> = {
  'reported-out': (facts) =>
    parts`You reported on ${each(facts, ({ until, ...report }) => parts`${noted(report)}${until === undefined ? '' : `, until ${until}`}`)} that it does not work. A newer report changes that`,
  'out-of-use': (facts) =>
    parts`Mapped as out of use, gone or not yet built${byTags(facts)}: do not go for it`,
  closed: (facts) => parts`Mapped as closed${byTags(facts)}: ask before you plan on it`,
  broken: (facts) => parts`Mapped as broken or locked${byTags(facts)}: ask before you plan on it`,
  'not-public': (facts) => parts`Not open to the public${byTags(facts)}: ask the owner first`,
  'permit-needed': (facts) => parts`Only with a permit${byTags(facts)}: get it, then confirm the point`,
  'out-of-season': (facts) =>
    parts`Out of season: ${each(facts, ({ season, from, to }) => parts`${season}, judged for ${to === null ? from : `${from} to ${to}`}`)}. Ask before you plan on it`,
  'not-there-yet': (facts) =>
    parts`${each(facts, ({ from, earliest }) => (earliest === null ? parts`There only from ${from}: say when the trip begins` : parts`There only from ${from}, and you may come on ${earliest}`))}`,
  'no-longer-there': (facts) =>
    parts`${each(facts, ({ until, latest }) => (latest === null ? parts`There only until ${until}: say when the trip begins` : parts`There only until ${until}, and you may come on ${latest}`))}`,
  'no-opening-found': (facts) =>
    parts`${each(facts, ({ hours, earliest, latest }) => parts`No opening is sure within two weeks of coming between ${earliest} and ${latest} (${hours})`)}: ask before you plan on it`,
  'no-pump': (facts) => parts`No pump${byTags(facts)}: needs rope and bucket aboard`,
  'fuel-not-sold': (facts) => parts`Does not sell your fuel${byTags(facts)}`,
  'grade-below-engine': (facts) =>
    parts`Lists only petrol of a lower octane number than your engine needs${byTags(facts)}`,
  'blend-beyond-engine': (facts) => parts`Lists only blends that your engine does not take${byTags(facts)}`,
  'for-aircraft': (facts) => parts`Fuel for aircraft, not for vehicles${byTags(facts)}`,
  'for-boats': (facts) => parts`For boats${byTags(facts)}: ask whether a vehicle can get there and is served`,
  'for-trains': (facts) => parts`For trains${byTags(facts)}: ask whether a vehicle is served`,
  'tags-contradict': (facts) =>
    parts`Its tags contradict each other (${each(facts, (one) => ('tags' in one ? tagList(one) : parts`water in one mapping of it, none in another`))}): take it as not fit to drink`,
  'for-fire-fighting': () => parts`Kept for fire fighting: not a supply`,
  'for-animals': () => parts`Water for animals, not for people`,
  decorative: () => parts`A fountain is taken as decorative unless its tags say drinking water`,
  'not-fit': (facts) => parts`Mapped as not fit to drink${byTags(facts)}`,
  salty: (facts) => parts`Salt water${byTags(facts)}: no filter takes out salt`,
  untreated: (facts) => parts`Untreated water${byTags(facts)}: treat before drinking`,
  'not-controlled': (facts) => parts`Not officially controlled${byTags(facts)}: treat before drinking`,
  'not-stated-fit': () => parts`Not stated fit to drink: treat before drinking`,
  'fit-on-condition': (facts) => parts`Fit to drink only on some condition${byTags(facts)}: ask, or treat it`,
  'fit-unclear': (facts) => parts`Whether it is fit to drink is unclear${byTags(facts)}: ask, or treat it`,
  'salt-unknown': () => parts`Well water may be salty or foul, which no filter mends: have it tested`,
  'minerals-unknown': () => parts`Hot springs may scald and hold minerals that no filter takes out`,
  'salt-found': (facts) =>
    parts`You noted on ${each(facts, noted)} that it is salty: only reverse osmosis takes out salt`,
  'line-lacks': (facts, say) =>
    parts`Your treatment line does not make it fit to drink: ${details(facts, say)}`,
  'use-unknown': () => parts`What the water is for, and whether it can be drawn, is not known`,
  'never-implied': (facts) =>
    parts`Its tags do not say that it sells ${each(facts, ({ fuel }) => parts`${FUEL_WORDS[fuel]}`)}, which many stations do not: ask first`,
  'other-fuels-listed': (facts) => parts`Other fuels are listed${byTags(facts)}, yours is not: ask first`,
  'grade-not-sold': (facts) =>
    parts`A grade of your fuel is not sold here${byTags(facts)}, no other is listed: ask first`,
  'fuel-kind-unknown': () => parts`Its tags do not say that it sells your fuel for vehicles: ask first`,
  'fuel-unclear': (facts) => parts`Whether it sells your fuel is unclear${byTags(facts)}: ask first`,
  'fuel-may-not-suit': (facts) =>
    parts`Sells a fuel that not every engine of your kind takes${byTags(facts)}: check the handbook`,
  'lorries-only': (facts) => parts`For heavy vehicles${byTags(facts)}: ask whether you are served`,
  'not-for-cars': (facts) => parts`Motor vehicles may not come here${byTags(facts)}: ask first`,
  'members-only': (facts) => parts`For members only${byTags(facts)}: ask whether you are served`,
  'access-unclear': (facts) => parts`Who may use it is unclear${byTags(facts)}: ask first`,
  'hard-to-fill': (facts) => parts`A bottle cannot be filled here${byTags(facts)}, let alone a can`,
  'status-unclear': (facts) => parts`Whether it works is unclear${byTags(facts)}: ask first`,
  'words-deny': (facts) =>
    parts`A mapper's words speak against it (${each(facts, ({ key, quote }) => parts`${key}: "${quote}"`)}): ask before you plan on it`,
  'may-be-dry': (facts) => parts`May be dry${byTags(facts)}: ask before you plan on it`,
  'season-unknown': (facts) =>
    parts`Only in season: ${each(facts, ({ season, dated }) => parts`${season}${dated ? '' : ', no date of departure given'}`)}. Ask before you plan on it`,
  'hours-unread': (facts) =>
    parts`${each(facts, ({ hours, unreadable }) => parts`Its hours ${unreadable ? 'cannot be read' : 'do not tell when it is open'}: ${hours}`)}. Ask before you plan on it`,
  stale: (facts) =>
    parts`Last edited or checked on ${dates(facts)}, over three years before: may have changed since`,
  undated: () => parts`Neither it nor its file says how old it is: confirm it, or vouch for the file's date`,
  'gone-in-newer': (facts) =>
    parts`Gone in the newer map (${each(facts, ({ source }) => parts`${source}`)}), which covers its place: ask first`,
  'on-closed-ground': (facts) =>
    parts`Lies inside ${each(facts, ({ land, name, id }) => parts`${CLOSED_LANDS[land]} (${name === null ? id : `${name}, ${id}`})`)}: ask whether you may go in`,
  'no-way-across': (facts) =>
    parts`No way across known: ${each(facts, (finding) => obstacle(finding))}. Find a bridge or a road to it on a map first`,
  'evidence-below': (facts) =>
    parts`${each(facts, ({ evidence, commodity, from }) => parts`Known as ${evidence} only, ${commodity} counts from ${from}`)}: confirm it, or ask for less`,
  'tags-differ': (facts) =>
    parts`The objects merged here differ (${each(facts, ({ id, keys }) => parts`${id}: ${keys.join(', ')}`)}): the worse reading is used`,
  'confirmation-expired': (facts) =>
    parts`Your confirmation has expired (${each(facts, expiry)}): confirm it again`,
  'confirmation-ahead': (facts) =>
    parts`Your confirmation of ${dates(facts)} lies after the day judged for, so it is not used`,
  'confirmation-undated': (facts) =>
    parts`Your confirmation of ${dates(facts)} cannot be weighed without a date of departure: give one`,
  'confirmation-not-yet': (facts) =>
    parts`Your confirmation holds only later (${each(facts, ({ on, from }) => parts`${on}, from ${from} on`)}), so it is not used`,
  confirmed: (facts) => parts`You confirmed it on ${each(facts, noted)}`,
  'confirm-again': (facts) =>
    parts`Confirm it again before leaving: ${each(facts, ({ on, from }) => parts`${on} is long before the departure, ask again from ${from} on`)}`,
  'confirmed-against-tags': (facts, say) =>
    parts`Your confirmation stands against this: ${each(facts, ({ against }) =>
      joined(
        against.map((reason) => reasonParts(reason, say)),
        '. ',
      ),
    )}`,
  'class-by-tags': () =>
    parts`You confirmed that it gives water; whether that is fit to drink still goes by the map`,
  'treat-everything': () =>
    parts`Stated fit to drink, but you treat every source that is not confirmed: fit for a resident is not fit for you`,
  'made-fit': (facts, say) => parts`Fit to drink only after your treatment line: ${details(facts, say)}`,
  'treated-as-far-as-known': (facts, say) => parts`Reckoned as far as known: ${details(facts, say)}`,
  'salt-noted': (facts) => parts`You noted on ${each(facts, noted)} that it is not salty`,
  'time-to-fill': (facts, say) => parts`Filling takes time: ${details(facts, say)}`,
  'in-season': (facts) =>
    parts`Only in season: ${each(facts, ({ season }) => parts`${season}`)}, and so on the day judged for`,
  'customers-only': (facts) => parts`For customers only${byTags(facts)}`,
  'access-unknown': (facts) => parts`Who may use it is not known${byTags(facts)}`,
  'lorry-pump': (facts) =>
    parts`Pump for heavy vehicles${byTags(facts)}: wide nozzle, may not fit your filler neck`,
  'diesel-kin': (facts) => parts`Diesel of another make${byTags(facts)}: check that your engine takes it`,
  'ethanol-blend': (facts) =>
    parts`Only petrol with ethanol is listed${byTags(facts)}: check that your engine takes it`,
  'low-octane': (facts) =>
    parts`Only petrol of low octane number is listed${byTags(facts)}: check that your engine takes it`,
  'grade-not-stated': (facts) =>
    parts`Whether its grade suits your engine is not stated${byTags(facts)}: ask first`,
  'powered-pump': (facts) => parts`The pump needs power${byTags(facts)}`,
  fee: (facts) => parts`Costs money${byTags(facts)}`,
  'opening-hours': (facts) => parts`Opening hours as mapped: ${each(facts, ({ hours }) => parts`${hours}`)}`,
  'way-not-looked-at': (facts) =>
    parts`What lies between it and the route is not looked at (${each(facts, ({ overM }) => parts`over ${figure(kmOf(overM), 'km')} off`)}): look at a map`,
  'check-date-ahead': (facts) => parts`A check date after the day judged for is not used${byTags(facts)}`,
  'mapper-doubt': (facts) =>
    parts`A mapper left a note to be looked into: ${each(facts, ({ note }) => parts`${note}`)}`,
  'laid-litres': (facts) =>
    parts`Your own supply: ${each(facts, ({ litres }) => parts`${figure(litres, 'l')}`)} and no more. See that it is still there`,
  'litres-told': (facts) =>
    parts`${each(facts, ({ litres, ...note }) => parts`No more than ${figure(litres, 'l')} is to be had, as you noted on ${noted(note)}`)}`,
  'own-point': (facts) => parts`Your own point, noted on ${each(facts, noted)}`,
  corrected: (facts) => parts`Corrected by you: ${each(facts, correction)}`,
};
