import type { MenuCommand } from '../../shared/protocol/menuCommands.ts';
import type { Desk } from './desk.ts';
import { openDialog } from './dialogs.ts';

/** Does what was chosen in the menu bar, as the window's own keys and menus do it. */
export function runMenuCommand(desk: Desk, command: MenuCommand): void {
  switch (command) {
    case 'new':
      openDialog('new');
      return;
    case 'open':
      void desk.openFile();
      return;
    case 'save':
      void desk.save();
      return;
    case 'saveAs':
      void desk.saveAs();
      return;
    case 'undo':
      desk.undo();
      return;
    case 'redo':
      desk.redo();
  }
}
