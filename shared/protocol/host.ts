import type { MenuCommand } from './menuCommands.ts';

/**
 * What the window asks of the program around it. The desktop and the loopback page offer the same; nothing in
 * renderer/ knows which it has. A refusal comes back as data with a sentence for the person, never as a rejection.
 */
export type HostResult<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

export interface OpenedFile {
  /** Opaque token for saving to the same place; not shown. */
  readonly handle: string;
  readonly fileName: string;
  /** An atlas file, or a bundle of one with its pictures. */
  readonly content: Uint8Array;
}

/** What is asked and answered. */
export interface HostCalls {
  /** Asks the person for an atlas file; null when they changed their mind. */
  openAtlas(): Promise<HostResult<OpenedFile | null>>;
  /** Writes to the place of `handle`, atomically, keeping the file before as a backup. */
  saveAtlas(handle: string, content: Uint8Array): Promise<HostResult<null>>;
  /**
   * Asks for a place and writes there; null when the person changed their mind. The ending of the suggested name says what
   * it is: .zip for a bundle, else an atlas file.
   */
  saveAtlasAs(
    suggestedName: string,
    content: Uint8Array,
  ): Promise<HostResult<{ handle: string; fileName: string } | null>>;
  /** Asks for a place and writes a file of another format there; false when the person changed their mind. */
  keepFile(suggestedName: string, content: Uint8Array): Promise<HostResult<boolean>>;
  /** Lets the person keep or print a self-contained page at its true size. */
  printPlaybook(html: string, suggestedName: string): Promise<HostResult<null>>;
  /** The atlas that comes with the program, as file text. */
  sampleAtlas(): Promise<HostResult<string>>;
}

export interface Host extends HostCalls {
  /** Hears what is chosen in a menu bar outside the window, where there is one; returns how to stop listening. */
  onCommand(listener: (command: MenuCommand) => void): () => void;
}
