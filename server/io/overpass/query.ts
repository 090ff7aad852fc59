import type { Bbox } from '../../contract/common.ts';
import { KIND_RULES, LIFECYCLE_PREFIXES, MAIN_KEYS, WATER_KEYS } from '../../core/supply/tags/kinds.ts';
import { isAreaKind, SURROUNDING_RULES } from '../../core/surroundings/kinds.ts';

/** Seconds that the server may work on one answer, and bytes of its memory (Overpass QL, settings). Ours: its own defaults. */
export const QUERY_TIMEOUT_S = 180;
const QUERY_MAX_BYTES = 536_870_912;

/** Values as an expression that finds each of them alone or in a list ("fuel;car_wash"). */
const anyOf = (values: readonly string[]): string => `(^|[; ])(${[...new Set(values)].join('|')})([; ]|$)`;

/** What each main key of the table of supplies may say. */
function valuesByKey(): Map<string, string[]> {
  const values = new Map<string, string[]>();
  for (const { forms } of KIND_RULES)
    for (const form of forms)
      for (const [key, value] of Object.entries(form))
        if (MAIN_KEYS.includes(key)) values.set(key, [...(values.get(key) ?? []), value]);
  return values;
}

/** Supplies: every kind of the table, in use or not, and whatever speaks of drinking water. More may come; readers choose. */
function supplyStatements(): string[] {
  const values = valuesByKey();
  const former = `[~"^(${LIFECYCLE_PREFIXES.join('|')}):(${[...values.keys()].join('|')})$"~"${anyOf([...values.values()].flat())}",i]`;
  return [
    ...[...values].map(([key, those]) => `nwr["${key}"~"${anyOf(those)}",i]`),
    `nwr${former}`,
    ...WATER_KEYS.map((key) => `nwr["${key}"]`),
  ];
}

const filterOf = ({ key, values, and }: (typeof SURROUNDING_RULES)[number]): string => {
  const own = values === 'any' ? `["${key}"]` : `["${key}"~"^(${values.join('|')})$",i]`;
  return (
    own +
    Object.entries(and ?? {})
      .map(([further, value]) => `["${further}"="${value}"]`)
      .join('')
  );
};

const isBorder = ({ what }: (typeof SURROUNDING_RULES)[number]): boolean => what === 'border';

/** A lake of more parts is as large as a country: its relation is not asked, and a lake is no barrier (ours). */
const MOST_LAKE_PARTS = 50;

/**
 * The ground that bears on supplies, and all roads.
 */
function groundStatements(): string[] {
  return SURROUNDING_RULES.flatMap((rule) => {
    const { what, shapes } = rule;
    const filter = filterOf(rule);
    const isArea = isAreaKind(what) || what === 'lake';
    return [
      ...(shapes.includes('point') ? [`node${filter}`] : []),
      ...(isArea ? [`way${filter}(if:is_closed())`] : []),
      ...(!isArea && (shapes.includes('line') || shapes.includes('ring')) ? [`way${filter}`] : []),
      ...(isAreaKind(what) ? [`rel${filter}`] : []),
      ...(what === 'lake'
        ? [`rel${filter}["type"="multipolygon"](if:count_members() <= ${MOST_LAKE_PARTS})`]
        : []),
    ];
  });
}

/**
 * What is asked of one box, in Overpass QL (wiki.openstreetmap.org/wiki/Overpass_API/Overpass_QL): supplies with their
 * last edits, the ground with its tags, and the places of both. Of borders only the ways in the box come with places.
 */
export function overpassQuery([west, south, east, north]: Bbox): string {
  const box = `(${south},${west},${north},${east})`;
  const lines = (statements: readonly string[]) => statements.map((one) => `  ${one}${box};`);
  const borders = SURROUNDING_RULES.filter(isBorder).map((rule) => `rel${filterOf(rule)}`);
  return [
    `[out:json][timeout:${QUERY_TIMEOUT_S}][maxsize:${QUERY_MAX_BYTES}];`,
    '(',
    ...lines(supplyStatements()),
    ')->.supplies;',
    '(',
    ...lines(groundStatements()),
    ')->.ground;',
    '(',
    ...lines(borders),
    ')->.borders;',
    `way(r.borders)${box}->.borderways;`,
    '.supplies out meta;',
    '.borders out body;',
    '(.ground;.borderways;);',
    'out body;',
    '(.supplies;.ground;.borderways;);',
    '>;',
    'out skel qt;',
    '',
  ].join('\n');
}
