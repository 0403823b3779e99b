import { createStore } from 'zustand/vanilla';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { TroubleWords } from '../ui/Trouble.tsx';

export interface Notice extends TroubleWords {
  readonly id: number;
}

/** Things that went wrong and are not tied to a place on the screen. */
export const noticeStore = createStore<readonly Notice[]>(() => []);

let last = 0;

export function dismissNotice(id: number): void {
  noticeStore.setState(
    noticeStore.getState().filter((notice) => notice.id !== id),
    true,
  );
}

/** What was told holds no longer. */
export function takeBackNotice(message: string): void {
  for (const notice of noticeStore.getState()) if (notice.message === message) dismissNotice(notice.id);
}

export function tell(trouble: TroubleWords): void {
  const shown = noticeStore.getState();
  if (shown.some(({ message }) => message === trouble.message)) return;
  last += 1;
  noticeStore.setState([...shown, { ...trouble, id: last }], true);
}

/** Any failure as words: an input problem says its own, anything else is a fault of the program and says so. */
export function troubleOf(error: unknown): TroubleWords {
  if (error instanceof InputProblem) return { message: error.message, remedy: error.remedy };
  const what = error instanceof Error ? error.message : String(error);
  return {
    message: `Something went wrong: ${what}`,
    remedy: 'Save the atlas to a file and reload the window.',
  };
}
