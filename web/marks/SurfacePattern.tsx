import type { Surface } from '../../server/contract/surface.ts';

/** Width of a surface's band on the strip's road, px. */
export const BAND_PX = 5;

/** What each surface looks like along the road: [drawn, left out] px and how much of the band is drawn across. */
const LOOKS: Record<Surface, { dash: string; widthPx: number } | null> = {
  sealed: { dash: '', widthPx: 2 },
  gravel: { dash: '2 2', widthPx: 3 },
  track: { dash: '8 4', widthPx: 3 },
  sand: { dash: '1 4', widthPx: 5 },
  rock: { dash: '3 1 1 1', widthPx: 5 },
  mud: { dash: '12 2', widthPx: 5 },
  salt: { dash: '1 2', widthPx: 5 },
  unknown: null,
};

interface SurfaceLineProps {
  surface: Surface;
  x: number;
  y1: number;
  y2: number;
}

/** A surface as a line of its own pattern; nothing where it is not told. */
export function SurfaceLine({ surface, x, y1, y2 }: SurfaceLineProps) {
  const look = LOOKS[surface];
  if (look === null) return null;
  return (
    <line
      className="surface-line"
      x1={x}
      x2={x}
      y1={y1}
      y2={y2}
      strokeWidth={look.widthPx}
      {...(look.dash === '' ? {} : { strokeDasharray: look.dash })}
    />
  );
}

/** The same, lying, for a legend. */
export function SurfaceSwatch({ surface }: { surface: Surface }) {
  const look = LOOKS[surface];
  return (
    <svg className="surface-swatch" width={44} height={14} aria-hidden="true">
      <rect width={44} height={14} />
      {look !== null && (
        <line
          className="surface-line"
          x1={0}
          x2={44}
          y1={7}
          y2={7}
          strokeWidth={look.widthPx}
          {...(look.dash === '' ? {} : { strokeDasharray: look.dash })}
        />
      )}
    </svg>
  );
}
