import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../../shared/protocol/menuCommands.ts';

export interface MenuActions {
  showBackups(): void;
  /** Hands a command to the window. */
  command(command: MenuCommand): void;
}

/** The menu bar: files, undoing, and what belongs to the program and the system; all else has its controls in the window. */
export function menuTemplate(
  platform: NodeJS.Platform,
  developing: boolean,
  actions: MenuActions,
): MenuItemConstructorOptions[] {
  const developer: MenuItemConstructorOptions[] = developing
    ? [{ type: 'separator' }, { role: 'reload' }, { role: 'toggleDevTools' }]
    : [];
  const item = (label: string, accelerator: string, command: MenuCommand): MenuItemConstructorOptions => ({
    label,
    accelerator,
    click: () => actions.command(command),
  });
  return [
    ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&File',
      submenu: [
        item('New', 'CmdOrCtrl+N', 'new'),
        item('Open a file', 'CmdOrCtrl+O', 'open'),
        { type: 'separator' },
        item('Save', 'CmdOrCtrl+S', 'save'),
        item('Save as', 'Shift+CmdOrCtrl+S', 'saveAs'),
        { type: 'separator' },
        { label: 'Show backups', click: () => actions.showBackups() },
        { type: 'separator' },
        platform === 'darwin' ? { role: 'close' } : { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        item('Undo', 'CmdOrCtrl+Z', 'undo'),
        item('Redo', 'Shift+CmdOrCtrl+Z', 'redo'),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
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
