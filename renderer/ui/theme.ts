import { plateTokensCss } from '../../shared/plate/tokens.ts';

export type ThemeChoice = 'auto' | 'light' | 'dark';
export type TextSize = 'usual' | 'large';

/** Gives the window the colours that drawings and pages use too. A constructed sheet needs no inline style. */
export function adoptTokens(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(plateTokensCss);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

const darkWanted = (): MediaQueryList => window.matchMedia('(prefers-color-scheme: dark)');

/** Shows the theme and text size; returns how to stop following the system's theme. */
export function showTheme(theme: ThemeChoice, textSize: TextSize): () => void {
  const root = document.documentElement;
  const system = darkWanted();
  const apply = (): void => {
    root.dataset['theme'] = theme === 'auto' ? (system.matches ? 'dark' : 'light') : theme;
  };
  root.dataset['text'] = textSize;
  apply();
  system.addEventListener('change', apply);
  return () => system.removeEventListener('change', apply);
}
