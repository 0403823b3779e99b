import { useMemo, useState } from 'react';
import type { Plan, PlanOption } from '../../shared/planner/plan.ts';
import { tryFrom, type TrySettings } from './trySettings.ts';

type Open =
  | { readonly kind: 'beside'; readonly pair: string; readonly ids: readonly string[] }
  | { readonly kind: 'try'; readonly pair: string; readonly settings: TrySettings }
  | { readonly kind: 'players' };

export interface Panel {
  /** What is open; null for the ledger itself. */
  readonly kind: Open['kind'] | null;
  /** Ids of the options set beside the one looked at; null where none are. */
  readonly besideIds: readonly string[] | null;
  readonly settings: TrySettings | null;
  readonly players: boolean;
  readonly setBeside: (ids: readonly string[]) => void;
  readonly changeTry: (change: Partial<TrySettings>) => void;
  readonly resetTry: () => void;
  readonly toggle: (kind: Open['kind']) => void;
  readonly close: () => void;
}

/**
 * What stands in place of the ledger: options side by side, a shot tried, or players beside each other. The first two hold
 * for one ball, one flag and one player; players stay while somebody walks the balls.
 */
export function usePanel(
  pair: string | null,
  plan: Plan | null,
  option: PlanOption | undefined,
  firm: boolean,
): Panel {
  const [open, setOpen] = useState<Open | null>(null);
  return useMemo(() => {
    const ready = pair !== null && plan !== null && option !== undefined;
    const besideIds = open?.kind === 'beside' && open.pair === pair && firm ? open.ids : null;
    const settings = open?.kind === 'try' && open.pair === pair && plan !== null ? open.settings : null;
    const now =
      besideIds !== null ? 'beside' : settings !== null ? 'try' : open?.kind === 'players' ? 'players' : null;
    const start = (kind: Open['kind']): Open | null => {
      if (kind === 'players') return { kind };
      if (!ready) return null;
      if (kind === 'try') return { kind, pair, settings: tryFrom(option) };
      const rival = plan.options.find(({ id }) => id === plan.chosenId && id !== option.id);
      const next = rival ?? plan.options.find(({ id, playAway }) => id !== option.id && !playAway);
      return { kind, pair, ids: next === undefined ? [] : [next.id] };
    };
    return {
      kind: now,
      besideIds,
      settings,
      players: now === 'players',
      setBeside: (ids) => pair !== null && setOpen({ kind: 'beside', pair, ids }),
      changeTry: (change) =>
        setOpen((before) =>
          before?.kind === 'try' ? { ...before, settings: { ...before.settings, ...change } } : before,
        ),
      resetTry: () =>
        setOpen((before) =>
          before?.kind === 'try' && option !== undefined ? { ...before, settings: tryFrom(option) } : before,
        ),
      toggle: (kind) => setOpen(now === kind ? null : start(kind)),
      close: () => setOpen(null),
    };
  }, [open, pair, plan, option, firm]);
}
