/** Reading and writing plain JSON values by path: '/fuel/tanks/0/litres'. Values are never changed in place. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const keysOf = (path: string): string[] => path.split('/').slice(1);

const isObject = (value: Json | undefined): value is { [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at the path, undefined where there is none. */
export function valueAt(root: Json, path: string): Json | undefined {
  let value: Json | undefined = root;
  for (const key of keysOf(path)) {
    if (Array.isArray(value)) value = value[Number(key)];
    else if (isObject(value)) value = value[key];
    else return undefined;
  }
  return value;
}

/** A copy with the value at the path set, or left out when it is undefined. Missing objects on the way are made. */
export function withValueAt(root: Json | undefined, path: string, value: Json | undefined): Json {
  const [key, ...rest] = keysOf(path);
  if (key === undefined) return value ?? null;
  const below = rest.length === 0 ? null : `/${rest.join('/')}`;
  if (Array.isArray(root)) {
    const copy = [...root];
    const index = Number(key);
    if (below !== null) copy[index] = withValueAt(copy[index], below, value);
    else if (value === undefined) copy.splice(index, 1);
    else copy[index] = value;
    return copy;
  }
  const copy = isObject(root) ? { ...root } : {};
  if (below !== null) copy[key] = withValueAt(copy[key], below, value);
  else if (value === undefined) delete copy[key];
  else copy[key] = value;
  return copy;
}
