import { metricText } from '../../server/words/parts/metric.ts';
import type { Part } from '../../server/words/parts/part.ts';

/** A sentence as the server's answers have it: its text in metric units, and its parts. */
export const told = (parts: Part[]): { text: string; parts: Part[] } => ({ text: metricText(parts), parts });
