import { numberText } from '../../../words/parts/metric.ts';
import { PRINTED } from '../../../words/printed.ts';
import { atPlace, distanceFigure, volumeFigure, withDistance, withVolume } from './rounding.ts';

export const VERDICT_WORDS = PRINTED.lines.verdicts;
export const EVIDENCE_WORDS = PRINTED.lines.evidence;

/** One decimal; a figure that is not zero but would print as zero keeps two more, so that its sign has a reason. */
export function figure(value: number): string {
  const text = value.toFixed(1);
  if (Number(text) !== 0) return numberText(text);
  const finer = value.toFixed(3);
  return numberText(Number(finer) === 0 ? '0.0' : finer);
}

/** In the reader's units, which are metric on the command line. */
export const km = (value: number): string => withDistance(figure(distanceFigure(value)));
export const litres = (value: number): string => withVolume(figure(volumeFigure(value)));
/** A place along the route: "km 212.0". */
export const place = (atKm: number): string => atPlace(figure(distanceFigure(atKm)));
