import { UsageProblem } from './usageProblem.ts';

/** What --units asks for; yards where it is left out. */
export function unitSystem(text: string | undefined): 'yards' | 'metres' {
  if (text === undefined || text === 'yards') return 'yards';
  if (text === 'metres') return 'metres';
  throw new UsageProblem(`--units is "${text}": give yards or metres.`);
}
