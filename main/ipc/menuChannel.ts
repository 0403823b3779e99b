/** The one message that goes from the program to the window. */
export const MENU_CHANNEL = 'menu:command';
