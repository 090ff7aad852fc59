import { type Problem, problemOf } from '../core/input/problem.ts';
import type { RouteRefusal } from '../core/phrases/route.ts';
import { routeRefusalWords } from '../words/words-of.ts';

/** Why no route can be made of a file, in words; `source` is the file, where it is known. */
export const routeProblem = (refusal: RouteRefusal, source: string | null): Problem =>
  problemOf({ code: refusal.code, source, ...routeRefusalWords(refusal) });
