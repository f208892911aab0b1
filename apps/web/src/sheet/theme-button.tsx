import type { ReactNode } from 'react';
import { Button } from './button.tsx';
import { useTheme } from './theme.ts';

/** Names the paper that it changes to: Slate is dark, Paper is light. */
export function ThemeButton(): ReactNode {
  const [theme, choose] = useTheme();
  return <Button onClick={() => choose(theme === 'light' ? 'dark' : 'light')}>{theme === 'light' ? 'Slate' : 'Paper'}</Button>;
}
