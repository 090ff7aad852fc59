import type { Mutant } from './mutants.ts';

/** A mutant that no test can or need notice, and why: it does not count. */
export interface Explained extends Pick<Mutant, 'file' | 'at' | 'from' | 'to'> {
  why: string;
}

export const EXPLAINED: readonly Explained[] = [
  {
    file: 'server/core/analyse/course-of.ts',
    at: 'return rings.length === 0 ? [] : coverSpans(route, rings);',
    from: 'rings.length === 0',
    to: 'false',
    why: 'Without rings coverSpans finds no span either: the question saves it the index of the route.',
  },
  {
    file: 'server/core/analyse/judge.ts',
    at: 'const asks = settled.tripFile.plan?.stops ?? [];',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'A text has no id, so it is what the user says of no stop.',
  },
  {
    file: 'server/core/analyse/ways-known.ts',
    at: '[source, ...(seenIn ?? [])].some((one) => one !== undefined && roadSources.has(one)),',
    from: 'one !== undefined',
    to: 'true',
    why: 'No source among those with roads is undefined: the question is for the compiler.',
  },
  {
    file: 'server/core/crew/needs/use-rows.ts',
    at: '(crew.pets ?? []).map(({ kg, litresPerDay }) =>',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'A text weighs no number of kilograms and takes no number of litres, and a use that takes none is left out.',
  },
  {
    file: 'server/core/gaps/course/even-course.ts',
    at: 'allowances.find((span) => span.fromM <= fromM && toM <= span.toM)?.factor ?? allowanceFactor;',
    from: 'span.fromM <= fromM',
    to: 'true',
    why: 'Stretches tile the route in order: the first that ends at or behind a piece begins before it.',
  },
  {
    file: 'server/core/gaps/gaps-of.ts',
    at: '...(mostL === undefined ? {} : { mostL }),',
    from: 'mostL === undefined',
    to: 'false',
    why: 'A key without a value reads as one that is not there, and JSON leaves it out.',
  },
  {
    file: 'server/core/pace/night-inside.ts',
    at: 'if (moreL <= 0) return [];',
    from: 'moreL <= 0',
    to: 'moreL < 0',
    why: 'Where not a drop more goes nothing turns, and no caution comes of it.',
  },
  {
    file: 'server/core/plan/gauge/gauge-of.ts',
    at: ': runs.find(({ stretch }) => stretch.from.atM < atM && stretch.to.atM >= atM);',
    from: 'stretch.from.atM < atM',
    to: 'true',
    why: 'Stretches follow each other from the start: the first that ends at or behind a place begins before it; at the start itself either way gives the first.',
  },
  {
    file: 'server/core/plan/question/thin-out.ts',
    at: "const idOf = ({ id }: SupplyEdge): string => id ?? '';",
    from: "''",
    to: '"Stryker was here!"',
    why: 'Only supplies on the way are ordered by it, and each of them has an id: start and end have none, and are not thinned out.',
  },
  {
    file: 'server/core/plan/search/search-plan.ts',
    at: 'else if (aims === null && rank === promises[0]?.rank && !mayBeDone(facts, promises, effort)) break;',
    from: 'promises[0]?.rank',
    to: 'promises[0].rank',
    why: 'While one of the promises is looked at there is a first.',
  },
  {
    file: 'server/core/plan/ways-out/fewest-cans.ts',
    at: "if (searched.status === 'none') return 'none';",
    from: "searched.status === 'none'",
    to: 'false',
    why: 'The model finds none either where the search, which looks at every plan, has found none: only slower, or out of time.',
  },
  {
    file: 'server/core/plan/what-if/changed/failed-stretches.ts',
    at: 'return { ...first, to, detours: [...detoursOf(made), ...inVain].sort((a, b) => a.atM - b.atM) };',
    from: 'a.atM - b.atM',
    to: 'a.atM + b.atM',
    why: 'Detours are summed or looked up by their place; their order shows in float noise alone.',
  },
  {
    file: 'server/core/supply/judge/judge-fuel.ts',
    at: "const judgement = new Judgement('doubtful');",
    from: "'doubtful'",
    to: '""',
    why: 'Each of these has a reason that weakens added at once, which leaves doubtful evidence whatever it was before.',
  },
  {
    file: 'server/core/supply/points/merge.ts',
    at: 'const inOrder = [...nodes].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));',
    from: 'a.id < b.id',
    to: 'a.id <= b.id',
    why: 'No two nodes have one id: of several versions of an object only the newest comes in.',
  },
  {
    file: 'server/core/supply/points/place.ts',
    at: 'twice += (lonA - lon0) * (latB - lat0) - (lonB - lon0) * (latA - lat0);',
    from: 'twice += (lonA - lon0) * (latB - lat0) - (lonB - lon0) * (latA - lat0)',
    to: 'twice -= (lonA - lon0) * (latB - lat0) - (lonB - lon0) * (latA - lat0)',
    why: 'The area is taken without its sign, which goes by the turn of the ring.',
  },
  {
    file: 'server/core/supply/tags/hours.ts',
    at: "return clauses.flatMap(([, word = '', inBrackets, bare = '']) => {",
    from: "''",
    to: '"Stryker was here!"',
    why: 'Every clause has a word, and hours in brackets or without: what stands in for none is never used.',
  },
  {
    file: 'server/core/treatment/source/treats-of.ts',
    at: "const own = Number.parseFloat(tags.ele ?? '');",
    from: "''",
    to: '"Stryker was here!"',
    why: 'Neither text is a number.',
  },
  {
    file: 'server/core/trip/check-trip.ts',
    at: 'for (const [index, confirmation] of (trip.confirmations ?? []).entries()) {',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'A text has no date, and what has none is passed over.',
  },
  {
    file: 'server/core/trip/check-trip.ts',
    at: 'for (const [index, note] of (trip.waterNotes ?? []).entries()) {',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'A text has no date, and what has none is passed over.',
  },
];
