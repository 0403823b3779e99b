import type { MenuItemConstructorOptions } from 'electron';

export interface MenuActions {
  showBackups(): void;
}

/** The menu bar: only what belongs to the program and the system; work on the atlas has its controls in the window. */
export function menuTemplate(
  platform: NodeJS.Platform,
  developing: boolean,
  actions: MenuActions,
): MenuItemConstructorOptions[] {
  const developer: MenuItemConstructorOptions[] = developing
    ? [{ type: 'separator' }, { role: 'reload' }, { role: 'toggleDevTools' }]
    : [];
  return [
    ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&File',
      submenu: [
        { label: 'Show backups', click: () => actions.showBackups() },
        { type: 'separator' },
        platform === 'darwin' ? { role: 'close' } : { role: 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: '&View',
      submenu: [
        { role: 'zoomIn', label: 'Larger' },
        { role: 'zoomOut', label: 'Smaller' },
        { role: 'resetZoom', label: 'Usual size' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        ...developer,
      ],
    },
    { role: 'windowMenu' },
  ];
}
