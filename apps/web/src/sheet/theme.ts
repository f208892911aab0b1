import { useSyncExternalStore } from 'react';

export type Theme = 'light' | 'dark';

const key = 'rotorwright.theme';
const system = matchMedia('(prefers-color-scheme: dark)');
const changed = new EventTarget();

function chosen(): Theme | undefined {
  const kept = document.documentElement.dataset['theme'];
  return kept === 'light' || kept === 'dark' ? kept : undefined;
}

/** Puts the theme that was chosen on this device in place; none chosen, the system's stands. */
export function startTheme(): void {
  try {
    const kept = localStorage.getItem(key);
    if (kept === 'light' || kept === 'dark') document.documentElement.dataset['theme'] = kept;
  } catch {
    // Without storage the system's choice stands.
  }
}

function choose(theme: Theme): void {
  document.documentElement.dataset['theme'] = theme;
  try {
    localStorage.setItem(key, theme);
  } catch {
    // It stands until the page is left.
  }
  changed.dispatchEvent(new Event('change'));
}

function subscribe(told: () => void): () => void {
  changed.addEventListener('change', told);
  system.addEventListener('change', told);
  return () => {
    changed.removeEventListener('change', told);
    system.removeEventListener('change', told);
  };
}

export function useTheme(): readonly [Theme, (theme: Theme) => void] {
  const theme = useSyncExternalStore(subscribe, () => chosen() ?? (system.matches ? 'dark' : 'light'));
  return [theme, choose];
}
