import { xmlText } from '../../xml-text.ts';
import { directionRuns } from '../model/direction.ts';

/** Places and sizes in a picture: millimetres on paper, y down. */
export interface PointMm {
  readonly x: number;
  readonly y: number;
}

/** Hundredths of a millimetre. */
const mm = (value: number): string => String(Math.round(value * 100) / 100);

export interface Pen {
  readonly widthMm: number;
  readonly ink?: string;
  /** Line and space in turn, mm. */
  readonly dashMm?: readonly number[];
}

const penText = ({ widthMm, ink = '#000', dashMm }: Pen): string =>
  `fill="none" stroke="${ink}" stroke-width="${mm(widthMm)}" stroke-linejoin="round"${dashMm === undefined ? '' : ` stroke-dasharray="${dashMm.map(mm).join(' ')}"`}`;

const pathText = (points: readonly PointMm[]): string =>
  `M${points.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}`;

export const line = (points: readonly PointMm[], pen: Pen): string =>
  `<path d="${pathText(points)}" ${penText(pen)}/>`;

/** A filled shape, its corners in turn. */
export const area = (points: readonly PointMm[], ink: string): string =>
  `<path d="${pathText(points)}Z" fill="${ink}"/>`;

export interface BoxMm extends PointMm {
  readonly width: number;
  readonly height: number;
}

export const rect = ({ x, y, width, height }: BoxMm, { ink, pen }: { ink: string; pen?: Pen }): string =>
  `<rect x="${mm(x)}" y="${mm(y)}" width="${mm(width)}" height="${mm(height)}" fill="${ink}"${pen === undefined ? '' : ` stroke="${pen.ink ?? '#000'}" stroke-width="${mm(pen.widthMm)}"`}/>`;

export const circle = ({ x, y }: PointMm, radius: number, { ink, pen }: { ink: string; pen: Pen }): string =>
  `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(radius)}" fill="${ink}" stroke="${pen.ink ?? '#000'}" stroke-width="${mm(pen.widthMm)}"/>`;

export interface TextPen {
  readonly sizeMm: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly ink?: string;
}

/** One line of text, `y` at its foot. */
export const text = (
  { x, y }: PointMm,
  words: string,
  { sizeMm, anchor = 'start', bold = false, ink = '#000' }: TextPen,
): string =>
  `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(sizeMm)}" text-anchor="${anchor}" fill="${ink}"${bold ? ' font-weight="bold"' : ''}>${spans(words)}</text>`;

/** Runs of one direction by themselves: readers that set a whole text in one would turn its numbers round. */
function spans(words: string): string {
  const runs = directionRuns(words);
  if (runs.every(({ isRightToLeft }) => !isRightToLeft)) return xmlText(words);
  return runs.map(({ text: run }) => `<tspan>${xmlText(run.replaceAll(' ', '\u00a0'))}</tspan>`).join('');
}

/** A box hatched with slanting lines: drawn one by one, since not every reader of SVG knows patterns. */
export function hatch({ x, y, width, height }: BoxMm, stepMm: number, pen: Pen): string {
  const lines: string[] = [];
  for (let at = stepMm; at < width + height; at += stepMm) {
    const from = { x: x + Math.min(at, width), y: y + Math.max(0, at - width) };
    const to = { x: x + Math.max(0, at - height), y: y + Math.min(at, height) };
    lines.push(line([from, to], pen));
  }
  return lines.join('');
}

/** A box of dots. */
export function dots({ x, y, width, height }: BoxMm, stepMm: number): string {
  const all: string[] = [];
  for (let down = stepMm / 2; down < height; down += stepMm)
    for (let across = stepMm / 2; across < width; across += stepMm)
      all.push(rect({ x: x + across - 0.15, y: y + down - 0.15, width: 0.3, height: 0.3 }, { ink: '#000' }));
  return all.join('');
}

/** The picture itself. */
export const svgText = (
  { width, height }: Pick<BoxMm, 'width' | 'height'>,
  body: readonly string[],
): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${mm(width)} ${mm(height)}" width="${mm(width)}mm" height="${mm(height)}mm">${body.join('')}</svg>`;
