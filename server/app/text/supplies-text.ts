import type { Analysis, Passing, Report } from '../../contract/analysis.ts';
import type { Plan } from '../../contract/plan.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure } from './lines/figures.ts';
import { plain } from './lines/plain.ts';

const WORDS = PRINTED.report;

/** Which passings a text is about: by point, place and commodity. */
type Place = Pick<Passing, 'id' | 'commodity' | 'atKm'>;

const keyOf = ({ id, commodity, atKm }: Place): string => `${commodity} ${id} ${atKm}`;

/** One line for each of some passings of which there is something to know, in route order. */
function linesOf({ passings }: Analysis, places: readonly Place[]): string[] {
  const keys = new Set(places.map(keyOf));
  return passings
    .filter((passing) => keys.has(keyOf(passing)) && passing.reasons.length > 0)
    .map(({ atKm, name, kind, reasons }) => {
      const texts = reasons.map(({ text }) => plain(text));
      return `- ${WORDS.supply(figure(atKm), plain(name ?? kind), texts.join('. '))}`;
    });
}

/**
 * What to know of the supplies that a commodity's verdicts rest on: why they are known no better, and what their tags
 * advise. Nothing where there is nothing to know.
 */
export function supplyLines(analysis: Analysis, commodity: Passing['commodity'], report: Report): string[] {
  const edges = report.gaps.flatMap(({ from, to }) => [from, to]);
  const places = edges.flatMap(({ id, atKm }) => (id === null ? [] : [{ id, commodity, atKm }]));
  const lines = linesOf(analysis, places);
  return lines.length === 0 ? [] : [WORDS.suppliesThatCount(commodity), ...lines];
}

/** The same of the stops that a plan uses. */
export function planSupplyLines(analysis: Analysis, plan: Plan): string[] {
  const used = plan.stops.flatMap(({ passings }) => passings.filter((passing) => passing.used));
  const lines = linesOf(analysis, used);
  return lines.length === 0 ? [] : [WORDS.suppliesOfPlan, ...lines];
}
