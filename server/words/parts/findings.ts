import type { Phrase } from '../../core/phrases/phrases.ts';
import type { Say } from './catalogue.ts';
import { metricText } from './metric.ts';
import { joined, type Parts, parts } from './part.ts';

/** Words of mappers and users on one line: each run of white space a blank, none at the ends. */
function onOneLine(all: Parts): Parts {
  return all.map((part, place) => {
    if (!('text' in part)) return part;
    const text = part.text.replace(/\s+/g, ' ');
    const start = place === 0 ? text.trimStart() : text;
    return { ...part, text: place === all.length - 1 ? start.trimEnd() : start };
  });
}

/** What was found, each once, in the order of the alphabet. */
export function each<Finding>(
  { findings }: { readonly findings: readonly Finding[] },
  detail: (finding: Finding) => Parts,
): Parts {
  const details = new Map<string, Parts>();
  for (const finding of findings) {
    const line = onOneLine(detail(finding));
    details.set(metricText(line), line);
  }
  const texts = [...details.keys()].sort();
  return joined(
    texts.map((text) => details.get(text) ?? []),
    '; ',
  );
}

interface Found<Finding> {
  readonly findings: readonly Finding[];
}

export const tagList = ({ tags: list }: { readonly tags: readonly string[] }): Parts =>
  parts`${list.join(', ')}`;
const tags = (facts: Found<{ readonly tags: readonly string[] }>): Parts => each(facts, tagList);
/** Tags where there are any, in brackets after a blank. */
export const byTags = ({ findings }: Found<{ readonly tags?: readonly string[] }>): Parts => {
  const told = findings.flatMap(({ tags: some }) => (some === undefined ? [] : [{ tags: some }]));
  return told.length === 0 ? [] : [{ text: ` (${metricText(tags({ findings: told }))})`, exact: true }];
};
export const dates = (facts: Found<{ readonly on: string }>): Parts => each(facts, ({ on }) => parts`${on}`);
export const details = (facts: Found<{ readonly detail: Phrase }>, say: Say): Parts =>
  each(facts, ({ detail }) => say(detail));
