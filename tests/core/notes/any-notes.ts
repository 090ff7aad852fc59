import fc from 'fast-check';
import type { FieldNotes } from '../../../server/contract/answers/field-notes.ts';

const day = fc
  .integer({ min: 0, max: 2000 })
  .map((days) => new Date(Date.parse('2024-01-01') + days * 86_400_000).toISOString().slice(0, 10));
/** Texts with everything that files trip over: quotes, separators, line ends, blanks, what spreadsheets run, odd signs. */
const text = (maxLength: number) =>
  fc
    .oneof(
      fc.string({ minLength: 1, maxLength, unit: 'binary' }),
      fc.string({ minLength: 1, maxLength, unit: 'grapheme' }),
      fc.string({ minLength: 1, maxLength, unit: fc.constantFrom(...'\'"=+-@,;<>&\t\r\n {}[]0a') }),
    )
    .filter((one) => one.length >= 1 && one.length <= maxLength);
const id = fc.oneof(fc.constantFrom('node/1', 'way/2', 'own/Far tap'), text(40));
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).filter((value) => !Object.is(value, -0));
const said = { by: text(60), phone: text(30), words: text(200) };
const was = fc.record(
  {
    lon: number(-180, 180),
    lat: number(-90, 90),
    tags: fc.dictionary(
      text(20).filter((key) => key !== '__proto__'),
      text(40),
      { maxKeys: 4 },
    ),
    near: fc.array(id, { maxLength: 3 }),
  },
  { requiredKeys: ['lon', 'lat'] },
);
const forward = <T extends { from?: string; until?: string }>(one: T): boolean =>
  one.from === undefined || one.until === undefined || one.from <= one.until;
const stretch = fc
  .tuple(number(0, 1000), number(0.001, 1000))
  .map(([fromKm, more]) => ({ fromKm, toKm: fromKm + more }));
const fuels = fc.uniqueArray(fc.constantFrom('diesel' as const, 'petrol' as const, 'lpg' as const), {
  minLength: 1,
  maxLength: 3,
});
const grade = fc.constantFrom('drinking' as const, 'treatable' as const, 'washing' as const);
const commodity = fc.constantFrom('fuel' as const, 'water' as const);
const litres = fc.record({ fuel: number(0.1, 900), water: number(0.1, 900) }, { requiredKeys: [] });

const confirmation = fc
  .record(
    { id, on: day, works: fc.boolean(), commodity, ...said, from: day, until: day, was },
    { requiredKeys: ['id', 'on', 'works'] },
  )
  .filter(forward);
const correction = fc.record(
  { id, on: day, fuels, grade, openingHours: text(40), ...said, was },
  { requiredKeys: ['id', 'on', 'fuels'] },
);
const at = fc
  .tuple(number(-90, 90), number(-180, 180))
  .map(([lat, lon]) => `${lat.toFixed(6)}, ${lon.toFixed(6)}`);
const ownPoint = fc
  .record(
    {
      id,
      name: text(60),
      at,
      fuels,
      grade,
      litres,
      from: day,
      until: day,
      openingHours: text(40),
      website: text(60),
      on: day,
      ...said,
    },
    { requiredKeys: ['id', 'at', 'grade', 'on'] },
  )
  .filter(forward);
const closed = fc
  .tuple(stretch, fc.record({ from: day, until: day, on: day, ...said }, { requiredKeys: ['on'] }))
  .map(([span, rest]) => ({ ...span, ...rest }))
  .filter(forward);
const heat = fc
  .tuple(
    stretch,
    fc.oneof(
      fc.record({ wbgtC: number(-10, 45) }),
      fc.record({ temperatureC: number(-20, 58), humidityPercent: number(0, 100) }),
    ),
    fc.record(
      {
        on: day,
        sun: fc.constantFrom('shade' as const, 'full' as const),
        workHoursPerDay: number(0, 24),
        ...said,
      },
      { requiredKeys: ['on'] },
    ),
  )
  .map(([span, air, rest]) => ({ ...span, ...air, ...rest }));
const waterNote = fc.record(
  { id, on: day, saltOk: fc.boolean(), depthM: number(0, 500), ph: number(0, 14), ...said, was },
  { requiredKeys: ['id', 'on', 'saltOk'] },
);
const laid = fc.record(
  {
    name: text(60),
    commodity,
    litres: number(0.1, 900),
    atKm: number(0, 2000),
    detourKm: number(0, 20),
    by: fc.constantFrom('depot' as const, 'others' as const),
    from: day,
  },
  { requiredKeys: ['commodity', 'litres', 'atKm'] },
);
const stop = fc.record(
  {
    id,
    mostLitres: litres,
    waitHours: number(0, 700),
    pricePerLitre: fc.record({ fuel: number(0, 9) }),
    on: day,
    ...said,
  },
  { requiredKeys: ['id'] },
);
const listOf = <T>(entry: fc.Arbitrary<T>) => fc.array(entry, { minLength: 1, maxLength: 4 });
const listOfIds = <T extends { id: string }>(entry: fc.Arbitrary<T>) =>
  fc.uniqueArray(entry, { minLength: 1, maxLength: 4, selector: (one) => one.id });

/** Notes of every kind, that fit the contract and do not contradict themselves. */
export const anyNotes: fc.Arbitrary<FieldNotes> = fc.record(
  {
    confirmations: listOf(confirmation),
    corrections: listOf(correction),
    ownPoints: listOfIds(ownPoint),
    closed: listOf(closed),
    heat: listOf(heat),
    waterNotes: listOf(waterNote),
    washingSources: listOf(id),
    laid: listOf(laid),
    oneWay: listOf(stretch),
    stops: listOfIds(stop),
  },
  { requiredKeys: [] },
) as fc.Arbitrary<FieldNotes>;
