export type JsonObject = { readonly [key: string]: unknown };

const MOST_SHOWN = 60;

/** Any value of a document as text for a message: objects may have keys that keep them from being made text. */
export const shown = (value: unknown): string =>
  (typeof value === 'object' && value !== null ? 'an object' : String(value)).slice(0, MOST_SHOWN);

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
