import type { KeptCommodity, KeptResults } from '../../server/contract/kept.ts';

const WIDTH = 128;
const HALF = 16;

/** The strip of a kept trip in small: what is left along the way, fuel above the line and water below; dry where nothing is. */
export function TripPicture({ results }: { results: KeptResults }) {
  return (
    <svg className="trip-picture" viewBox={`0 0 ${WIDTH} ${2 * HALF}`} aria-hidden="true">
      <Bars of={results.fuel} commodity="fuel" upward />
      <Bars of={results.water} commodity="water" upward={false} />
      <line x1={0} x2={WIDTH} y1={HALF} y2={HALF} />
    </svg>
  );
}

function Bars({
  of: { shares, verdicts },
  commodity,
  upward,
}: {
  of: KeptCommodity;
  commodity: string;
  upward: boolean;
}) {
  const width = WIDTH / Math.max(1, shares.length);
  return shares.map((share, index) => {
    const verdict = verdicts[index] ?? 'unknown';
    const height = verdict === 'short' ? HALF : Math.max(1, Math.min(1, share) * HALF);
    return (
      <rect
        // biome-ignore lint/suspicious/noArrayIndexKey: a piece of the picture is its place
        key={index}
        className={`${commodity} ${verdict}`}
        x={index * width}
        y={upward ? HALF - height : HALF}
        width={width}
        height={height}
      />
    );
  });
}
