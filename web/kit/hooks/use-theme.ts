import { useEffect } from 'react';
import { useMedia } from './use-media.ts';
import { oneOf, useKept } from './use-setting.ts';

export type ThemeChoice = 'system' | 'light' | 'dark';
const KEPT = oneOf<ThemeChoice>('drystage-theme', ['system', 'light', 'dark']);

/** Light or dark: the reader's choice, or the system's where they leave it to it. Sets data-theme on the root. */
export function useTheme(): { dark: boolean; choice: ThemeChoice; choose: (next: ThemeChoice) => void } {
  const [choice, choose] = useKept(KEPT);
  const systemDark = useMedia('(prefers-color-scheme: dark)');
  const dark = choice === 'system' ? systemDark : choice === 'dark';
  useEffect(() => {
    document.documentElement.dataset.theme = dark ? 'dark' : 'light';
  }, [dark]);
  return { dark, choice, choose };
}
