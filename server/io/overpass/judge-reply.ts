import { tellsOfFailure } from '../osm/extract/whole-file/remark.ts';
import { isObject, type JsonObject } from '../osm/json/json-object.ts';

/** An answer of Overpass that is whole. */
export interface WholeReply extends JsonObject {
  readonly elements: readonly unknown[];
}

/** What the text of an answer with status 200 is. */
export type Judged =
  | { outcome: 'whole'; reply: WholeReply }
  /** The server gave up on the way and sends what it had: partial data is no answer. */
  | { outcome: 'gave-up'; text: string }
  | { outcome: 'page'; text: string }
  | { outcome: 'broken'; came: string };

/** Characters of a server's own words that are passed on. */
const WORDS_MAX = 300;

/** What a page says, without its tags. */
export const wordsOfPage = (page: string): string =>
  page
    .replace(/<(script|style|head)\b[\s\S]*?<\/\1>/gi, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, WORDS_MAX);

export function judgeReply(text: string): Judged {
  if (text.trimStart().startsWith('<')) return { outcome: 'page', text: wordsOfPage(text) };
  let reply: unknown;
  try {
    reply = JSON.parse(text);
  } catch {
    return { outcome: 'broken', came: `${text.length} characters that are no whole JSON` };
  }
  if (!isObject(reply) || !Array.isArray(reply.elements))
    return { outcome: 'broken', came: 'JSON without "elements"' };
  const { elements, remark } = reply;
  if (typeof remark === 'string' && tellsOfFailure(remark))
    return { outcome: 'gave-up', text: remark.trim().slice(0, WORDS_MAX) };
  return { outcome: 'whole', reply: { ...reply, elements } };
}
