import type { WebContents } from 'electron';
import type { MenuCommand } from '../../shared/protocol/menuCommands.ts';
import { MENU_CHANNEL } from './menuChannel.ts';

/** Hands what was chosen in the menu bar to the window, which does it as if it had been chosen there. */
export const sendCommand = (contents: WebContents, command: MenuCommand): void =>
  contents.send(MENU_CHANNEL, command);
