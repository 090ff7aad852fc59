import { useEffect } from 'react';
import { useMedia } from './use-media.ts';
import { useSetting } from './use-setting.ts';

const CHOICES = ['system', 'light', 'dark'] as const;
export type ThemeChoice = (typeof CHOICES)[number];

/** Light or dark: the reader's choice, or the system's where they leave it to it. Sets data-theme on the root. */
export function useTheme(): { dark: boolean; choice: ThemeChoice; choose: (next: ThemeChoice) => void } {
  const [choice, choose] = useSetting<ThemeChoice>('drystage-theme', CHOICES, 'system');
  const systemDark = useMedia('(prefers-color-scheme: dark)');
  const dark = choice === 'system' ? systemDark : choice === 'dark';
  useEffect(() => {
    document.documentElement.dataset.theme = dark ? 'dark' : 'light';
  }, [dark]);
  return { dark, choice, choose };
}
