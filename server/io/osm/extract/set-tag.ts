/** Sets a tag as a plain property, whatever its key. */
export function setTag(tags: Record<string, string>, key: string, value: string): void {
  if (key !== '__proto__') tags[key] = value;
  else Object.defineProperty(tags, key, { value, enumerable: true, configurable: true, writable: true });
}
