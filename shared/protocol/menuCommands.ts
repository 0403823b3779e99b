/** What the menu bar of the desktop can ask of the window: the same as its own keys and menus do. */
export const menuCommands = ['new', 'open', 'save', 'saveAs', 'undo', 'redo'] as const;
export type MenuCommand = (typeof menuCommands)[number];

export const isMenuCommand = (given: unknown): given is MenuCommand =>
  menuCommands.some((command) => command === given);
