import { createStore } from 'zustand/vanilla';

/** Windows over the window: one at a time. */
export type DialogName =
  | 'library'
  | 'new'
  | 'holes'
  | 'layers'
  | 'place'
  | 'bringIn'
  | 'pastePoints'
  | 'levelBook'
  | 'planeByEye'
  | 'sendOut';

export const dialogStore = createStore<{ readonly open: DialogName | null }>(() => ({ open: null }));

export const openDialog = (open: DialogName | null): void => dialogStore.setState({ open });
