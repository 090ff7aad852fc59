import type { PlanEdge } from '../../../contract/plan.ts';
import { PRINTED } from '../../../words/printed.ts';
import { figure } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';

const WORDS = PRINTED.lines;

/** A place of a plan by its name, or by what it is, and its kilometre. */
export const placeText = ({ kind, name, atKm }: PlanEdge): string =>
  WORDS.place(plain(name ?? WORDS.unnamedPlaces[kind]), figure(atKm));
