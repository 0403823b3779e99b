import { createStore } from 'zustand/vanilla';
import { documentOf } from '../../shared/atlas/documentChanges.ts';
import type { AtlasRecord } from '../../shared/atlas/records.ts';
import { type AtlasContent, isBundle, readAtlasContent } from '../../shared/formats/bundle.ts';
import type { OpenAnswer } from '../workers/formatsChannel.ts';
import { FormatsClient } from '../workers/formatsClient.ts';
import { sha256Of } from '../workers/sha256.ts';
import { tell, troubleOf } from './notices.ts';

/** A file that takes so long to read that it is told. */
export interface FileBeingRead {
  readonly fileName: string;
  readonly share: number;
  readonly cancel: () => void;
}

export const readingStore = createStore<FileBeingRead | null>(() => null);

/** As much as the host reads of a file. */
const MOST_BYTES = 256 * 1024 * 1024;
/** A plain atlas file of this size is read before a worker has started; what a bundle holds, its size does not tell. */
const MOST_BYTES_AT_ONCE = 512 * 1024;
const TOLD_AFTER_MS = 300;

/** Reads atlas files, one at a time, away from the window unless they are small. */
export class FileReading {
  readonly #client: FormatsClient;
  #giveUp: (() => void) | null = null;

  constructor(client = new FormatsClient()) {
    this.#client = client;
  }

  /** The atlas of a file; null where it cannot be read, which has been told by then, or is wanted no more. */
  async read(content: Blob, fileName: string): Promise<AtlasContent | null> {
    this.cancel();
    if (content.size > MOST_BYTES) {
      const megabytes = String(Math.round(content.size / 1048576));
      tell({
        message: `${fileName}: the file has ${megabytes} MB, far more than an atlas can.`,
        remedy: 'Choose an atlas file.',
      });
      return null;
    }
    try {
      if (content.size <= MOST_BYTES_AT_ONCE) {
        const bytes = new Uint8Array(await content.arrayBuffer());
        if (!isBundle(bytes))
          return await readAtlasContent(bytes, fileName, sha256Of, { crossingOutlines: 'keep' });
      }
      const answer = await this.#asked(content, fileName);
      if (answer === null) return null;
      if (answer.kind === 'open') {
        const { pictures, damaged } = answer;
        // They were held to the schema before they were written.
        const records = JSON.parse(answer.records) as readonly AtlasRecord[];
        return { document: documentOf(records), pictures, damaged };
      }
      tell(answer.problem);
    } catch (error) {
      tell(troubleOf(error));
    }
    return null;
  }

  /** Wants the file no more that is being read. */
  cancel(): void {
    this.#giveUp?.();
  }

  #asked(content: Blob, fileName: string): Promise<OpenAnswer | null> {
    return new Promise((resolve) => {
      let share = 0;
      let told = false;
      const cancel = (): void => finish(null);
      const show = (): void => readingStore.setState({ fileName, share, cancel }, true);
      const timer = setTimeout(() => {
        told = true;
        show();
      }, TOLD_AFTER_MS);
      const finish = (answer: OpenAnswer | null): void => {
        clearTimeout(timer);
        this.#giveUp = null;
        readingStore.setState(null, true);
        // An atlas is opened now and then: its reader's memory is worth more than its next start.
        this.#client.close();
        resolve(answer);
      };
      this.#giveUp = cancel;
      this.#client.ask(
        { kind: 'open', fileName, content },
        {
          progress: (now) => {
            share = now;
            if (told) show();
          },
          answer: finish,
          stopped: (problem) =>
            finish({
              kind: 'failed',
              problem: { ...problem, message: `${fileName}: ${problem.message}` },
            }),
        },
      );
    });
  }
}
