/** What differs between two values, a line each: figures by more than one part in 10^12, anything else at all. */
export function differences(before: unknown, after: unknown, at = ''): string[] {
  if (typeof before === 'number' && typeof after === 'number') {
    const scale = Math.max(1, Math.abs(before), Math.abs(after));
    return Object.is(before, after) || Math.abs(before - after) <= 1e-12 * scale
      ? []
      : [`${at}: ${before} → ${after}`];
  }
  if (typeof before === 'string' && typeof after === 'string') {
    if (before === after) return [];
    const parsed = [before, after].map(asJson);
    if (parsed.every((value) => value !== undefined)) return differences(parsed[0], parsed[1], at);
    return lineDifferences(before, after, at);
  }
  if (Array.isArray(before) && Array.isArray(after) && at.includes('/answer/')) {
    const [old, now] = [sentence(before), sentence(after)];
    if (old.length !== before.length || now.length !== after.length) return differences(old, now, at);
  }
  if (Array.isArray(before) && Array.isArray(after)) {
    if (before.length !== after.length) return [`${at}: ${before.length} → ${after.length} entries`];
    return before.flatMap((value, index) => differences(value, after[index], `${at}/${index}`));
  }
  if (isObject(before) && isObject(after)) {
    return Object.entries(before).flatMap(([key, value]) =>
      key in after ? differences(value, after[key], `${at}/${key}`) : [`${at}/${key}: gone`],
    );
  }
  return before === after ? [] : [`${at}: ${shown(before)} → ${shown(after)}`];
}

function lineDifferences(before: string, after: string, at: string): string[] {
  const [old, now] = [before.split('\n'), after.split('\n')];
  if (old.length !== now.length) {
    const first = old.findIndex((line, index) => line !== now[index]);
    return [
      `${at} line ${first + 1} (${old.length} → ${now.length} lines): ${shown(old[first])} → ${shown(now[first])}`,
    ];
  }
  return old.flatMap((line, index) =>
    line === now[index] ? [] : [`${at} line ${index + 1}: ${shown(line)} → ${shown(now[index])}`],
  );
}

/** A sentence's words next to each other as one: where it was cut between two figures says nothing. */
function sentence(all: readonly unknown[]): unknown[] {
  const whole: unknown[] = [];
  for (const part of all) {
    const last = whole.at(-1);
    if (typeof part === 'string' && typeof last === 'string') whole[whole.length - 1] = last + part;
    else whole.push(part);
  }
  return whole;
}

function asJson(text: string): unknown {
  if (!text.startsWith('{')) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const shown = (value: unknown): string => JSON.stringify(value)?.slice(0, 240) ?? 'nothing';
