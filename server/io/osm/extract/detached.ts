import type { RawElement } from './raw-element.ts';
import { setTag } from './set-tag.ts';

/**
 * A copy of text that shares no memory: a short piece cut out of a long text keeps all of that alive (V8's sliced
 * strings), which for elements kept out of a big file comes to the whole file.
 */
const own = (text: string): string => Buffer.from(text).toString();

/** An element as it is, whose texts keep nothing else alive. `keepTag` chooses among its tags. */
export function detached(element: RawElement, keepTag: (key: string) => boolean = () => true): RawElement {
  const copy: RawElement = { ...element };
  if (element.timestamp !== undefined) copy.timestamp = own(element.timestamp);
  if (element.members !== undefined) {
    copy.members = element.members.map((member) => ({ ...member, role: own(member.role) }));
  }
  if (element.tags === undefined) return copy;
  const tags: Record<string, string> = {};
  for (const [key, value] of Object.entries(element.tags))
    if (keepTag(key)) setTag(tags, own(key), own(value));
  if (Object.keys(tags).length === 0) delete copy.tags;
  else copy.tags = tags;
  return copy;
}

/** An element that only lends its place: without its tags, which must not speak for it. */
export const lentOnly = (element: RawElement): RawElement => detached(element, () => false);
