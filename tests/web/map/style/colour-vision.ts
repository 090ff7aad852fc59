/** Colour arithmetic for the tests of the palette. */
type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

/**
 * How colours look without one kind of cone: Machado, Oliveira and Fernandes, "A physiologically-based model for
 * simulation of color vision deficiency", IEEE TVCG 15(6), 2009, severity 1.0; for linear sRGB. The figures are from
 * memory and agree with several published copies.
 */
export const VISION: Record<'normal' | 'protanopia' | 'deuteranopia' | 'tritanopia', Matrix> = {
  normal: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** "#c56a10" as linear light, 0 to 1 (IEC 61966-2-1). */
function linear(hex: string): Triple {
  const value = Number.parseInt(hex.slice(1), 16);
  const channel = (byte: number): number => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return [channel((value >> 16) & 255), channel((value >> 8) & 255), channel(value & 255)];
}

const times = (matrix: Matrix, [x, y, z]: Triple): Triple =>
  matrix.map(([a, b, c]) => a * x + b * y + c * z) as unknown as Triple;

const luminance = ([r, g, b]: Triple): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, "contrast ratio"). */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** Linear sRGB to CIE L*a*b* under D65. */
function lab(rgb: Triple): Triple {
  const xyz = times(
    [
      [0.4124564, 0.3575761, 0.1804375],
      [0.2126729, 0.7151522, 0.072175],
      [0.0193339, 0.119192, 0.9503041],
    ],
    rgb.map((channel) => Math.min(1, Math.max(0, channel))) as unknown as Triple,
  );
  const white: Triple = [0.95047, 1, 1.08883];
  const [x, y, z] = xyz.map((value, i) => {
    const t = value / white[i]!;
    return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
  }) as unknown as Triple;
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** How far apart two colours look (CIE 1976 difference) to an eye of this kind. */
export function difference(a: string, b: string, vision: keyof typeof VISION): number {
  const [p, q] = [a, b].map((hex) => lab(times(VISION[vision], linear(hex)))) as [Triple, Triple];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}
