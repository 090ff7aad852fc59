import type { ReactNode } from 'react';
import { t } from '../language/t.ts';

/** What each mark of the strip means, by the class that it is drawn in. */
export const STRIP_MARKS: Record<string, { words: string; picture: ReactNode }> = {
  'strip-left': {
    words: t('what is left'),
    picture: <polygon className="strip-left" points="0,0 30,7 0,14" />,
  },
  'strip-into-reserve': {
    words: t('into the reserve'),
    picture: [1, 6, 11].map((y) => <rect key={y} className="strip-left" width={30} height={2.6} y={y} />),
  },
  'strip-dry': {
    words: t('runs dry'),
    picture: [0, 7, 14, 21].map((x) => (
      <polygon key={x} className="strip-dry-ground" points={`${x},14 ${x + 3},14 ${x + 10},0 ${x + 7},0`} />
    )),
  },
  'strip-reserve-level': {
    words: t('the reserve: a floor not to go below'),
    picture: <path className="strip-reserve-level" d="M10,14V7L16,7V0" />,
  },
  'strip-no-cover': {
    words: t('no map data'),
    picture: [4, 12, 20, 28].map((x) => <circle key={x} className="strip-dot" cx={x} cy={7} r={1.4} />),
  },
  'strip-fill': {
    words: t('a supply relied on'),
    picture: <line className="strip-fill" x1={0} x2={30} y1={7} y2={7} />,
  },
  'strip-uncounted': {
    words: t('not relied on'),
    picture: (
      <g className="strip-uncounted">
        <rect x={5} y={4} width={6} height={6} />
        <circle cx={22} cy={7} r={3.2} />
      </g>
    ),
  },
  'strip-turn-back': {
    words: t('turn back before here; later ones hollow'),
    picture: (
      <g className="strip-turn-back">
        <polygon points="8,12 3,3 13,3" />
        <polygon className="strip-later" points="22,12 17,3 27,3" />
      </g>
    ),
  },
  'strip-chosen': {
    words: t('the chosen stretch'),
    picture: <rect className="strip-chosen" x={2} y={2} width={26} height={10} />,
  },
  'strip-used': {
    words: t('the plan fills here'),
    picture: (
      <>
        <rect className="strip-used" x={3} y={2.5} width={9} height={9} />
        <circle className="strip-used" cx={22} cy={7} r={5} />
      </>
    ),
  },
  'strip-passed': {
    words: t('the plan passes it by'),
    picture: <line className="strip-passed" x1={8} x2={20} y1={7} y2={7} />,
  },
  'strip-can': {
    words: t('full cans, a band each'),
    picture: [2, 11, 20].map((x) => <rect key={x} className="strip-can" x={x} y={1} width={8} height={12} />),
  },
  'strip-can-bar': {
    words: t('how far they are carried; a dot pours one'),
    picture: (
      <g className="strip-can-bar">
        <line x1={2} x2={28} y1={7} y2={7} />
        <circle cx={16} cy={7} r={3.2} />
      </g>
    ),
  },
  'strip-drinkable': {
    words: t('to drink, towards the road; beyond it for washing'),
    picture: (
      <g className="strip-water">
        <rect className="strip-left" width={30} height={14} />
        <path className="strip-drinkable" d="M20,14L12,0" />
      </g>
    ),
  },
  'strip-capacity': {
    words: t('tanks full'),
    picture: <line className="strip-capacity" x1={15} x2={15} y1={0} y2={14} />,
  },
  'strip-night': {
    words: t('a night'),
    picture: <path className="strip-night" d="M17,3 A4.5,4.5 0 1 0 17,11 A4.3,4.3 0 0 1 17,3 Z" />,
  },
  'strip-closed': {
    words: t('closed'),
    picture: <path className="strip-cross" d="M4,0L18,14M18,0L4,14M12,0L26,14M26,0L12,14" />,
  },
  'surface-line': {
    words: t('surface, as in Days'),
    picture: (
      <>
        <rect className="strip-road-bed" width={30} height={14} />
        <line className="surface-line" x1={0} x2={30} y1={7} y2={7} strokeWidth={3} strokeDasharray="8 4" />
      </>
    ),
  },
};

/** What the strip's marks mean, until it is closed over the strip's lower part. */
export function StripLegend({ planned }: { planned: boolean }) {
  return (
    <details className="strip-legend">
      <summary>{t('Key')}</summary>
      <ul className="strip-fuel">
        {Object.entries(STRIP_MARKS)
          .filter(([mark]) => planned || !OF_PLANS.includes(mark))
          .map(([mark, { words, picture }]) => (
            <li key={mark} data-mark={mark}>
              <svg width={30} height={14} viewBox="0 0 30 14" aria-hidden="true" focusable="false">
                {picture}
              </svg>
              {words}
            </li>
          ))}
      </ul>
    </details>
  );
}

/** Drawn with a plan only. */
const OF_PLANS = [
  'strip-used',
  'strip-passed',
  'strip-can',
  'strip-can-bar',
  'strip-drinkable',
  'strip-capacity',
];
