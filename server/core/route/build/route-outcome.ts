import type { RouteRefusal } from '../../phrases/route.ts';

/** What comes of a route's document, or why no route can be made of it. */
export type RouteOutcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: RouteRefusal };
