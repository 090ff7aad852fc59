import type { PlanEdge } from '../../../contract/plan.ts';
import { printed } from '../../../words/printed.ts';
import { place } from '../lines/figures.ts';
import { plain } from '../lines/plain.ts';

const words = () => printed().lines;

/** A place of a plan by its name, or by what it is, and its kilometre. */
export const placeText = ({ kind, name, atKm }: PlanEdge): string =>
  words().place(plain(name ?? words().unnamedPlaces[kind]), place(atKm));
