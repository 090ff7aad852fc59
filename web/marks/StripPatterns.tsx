import type { Commodity } from '../../server/contract/common.ts';

/** Stripes for the reserve, hatching for dry, dots for no map data: colour is never alone in saying so. */
export function StripPatterns({ prefix }: { prefix: string }) {
  return (
    <defs>
      {(['fuel', 'water'] as const).map((commodity: Commodity) => (
        <pattern
          key={commodity}
          id={`${prefix}${commodity}-stripes`}
          width={8}
          height={6}
          patternUnits="userSpaceOnUse"
        >
          <rect width={8} height={3.4} fill={`var(--${commodity})`} />
        </pattern>
      ))}
      {(['fuel', 'water'] as const).map((commodity: Commodity) => (
        <pattern
          key={commodity}
          id={`${prefix}${commodity}-hatch`}
          width={7}
          height={7}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${commodity === 'fuel' ? 45 : -45})`}
        >
          <rect width={3} height={7} fill="var(--dry)" />
        </pattern>
      ))}
      {(['fuel', 'water'] as const).map((commodity: Commodity) => (
        <pattern
          key={commodity}
          id={`${prefix}${commodity}-dots`}
          width={7}
          height={7}
          patternUnits="userSpaceOnUse"
        >
          <circle cx={3.5} cy={3.5} r={1.1} fill="var(--ink)" />
        </pattern>
      ))}
      <pattern id={`${prefix}closed`} width={8} height={8} patternUnits="userSpaceOnUse">
        <rect width={8} height={8} fill="var(--sheet)" />
        <path d="M0,0L8,8M8,0L0,8" stroke="var(--ink)" strokeWidth={2} />
      </pattern>
      <pattern id={`${prefix}road-dots`} width={5} height={5} patternUnits="userSpaceOnUse">
        <circle cx={2.5} cy={2.5} r={1} fill="var(--sheet)" />
      </pattern>
    </defs>
  );
}
