import type { RouteDocument } from '../../input/sources.ts';
import type { RouteLine } from '../route-line.ts';
import { buildRoute, type RouteChoice } from './build-route.ts';
import type { RouteOutcome } from './route-outcome.ts';

interface Built extends RouteChoice {
  readonly line: RouteLine;
}

/** The last route of each document: it is asked for as often as a rig changes, and building it takes longest. */
const last = new WeakMap<RouteDocument, Built>();

/** The route that a choice makes of a document, as buildRoute; built again only where the choice is another. */
export function routeOf(document: RouteDocument, choice: RouteChoice): RouteOutcome<RouteLine> {
  const known = last.get(document);
  if (known?.part === choice.part && known.sparseStepM === choice.sparseStepM) {
    return { ok: true, value: known.line };
  }
  const outcome = buildRoute(document, choice);
  if (outcome.ok) last.set(document, { ...choice, line: outcome.value });
  return outcome;
}
