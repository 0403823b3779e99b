import { headerOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import { historyOf } from '../../shared/atlas/history.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { Host, HostResult } from '../../shared/protocol/host.ts';
import type { ShelfRow } from '../library/database.ts';
import type { Library, ShelvedAtlas } from '../library/library.ts';
import type { Pictures } from '../library/pictures.ts';
import { writtenAtlas } from './atlasContent.ts';
import {
  atlasStore,
  documentOfAtlas,
  historyFrom,
  type OpenAtlas,
  stepped,
  stepsAt,
  withStep,
  writing,
} from './openAtlas.ts';
import { fileNameFrom } from './fileNameFrom.ts';
import { ELSEWHERE, holdAtlas } from './holdAtlas.ts';
import { newAtlas, type NewAtlas } from './newAtlas.ts';
import { takeBackNotice, tell, troubleOf } from './notices.ts';
import { type Preferences, preferencesFrom, preferencesStore } from './preferences.ts';
import { keptPictures } from './pictureFiles.ts';
import { FileReading } from './readingFile.ts';
import { playersElsewhere, type PlayersOfAtlas } from './playersElsewhere.ts';
import { copyShelved, documentOnShelf, namedAtlas, nameShelved, stateAt } from './shelved.ts';
import { watchLibrary } from './watchLibrary.ts';
import { firstSession, type Session, sessionFrom, sessionStore, withHole } from './session.ts';
import { seldom } from './seldom.ts';

const LAST_OPEN = 'last-open';
const PREFERENCES = 'preferences';
/** How often what is chosen is written, at most, ms. */
const ABOUT_EVERY_MS = 300;

/** Everything a person does to atlases as a whole, and the only writer of the open atlas. */
export class Desk {
  readonly #library: Library;
  readonly #host: Host;
  readonly #now: () => number;
  readonly #pictures: Pictures;
  readonly #reading: FileReading;
  #notKeptWords = '';

  constructor(
    library: Library,
    host: Host,
    now: () => number = Date.now,
    pictures: Pictures = keptPictures(),
    reading = new FileReading(),
  ) {
    this.#library = library;
    this.#host = host;
    this.#now = now;
    this.#pictures = pictures;
    this.#reading = reading;
  }

  /** Opens what was open last, or the sample course at first start; keeps the session and preferences from then on. */
  async start(): Promise<void> {
    // A library that another window keeps to itself may take long: it is told, and the window shown meanwhile.
    const waits = watchLibrary(this.#library, this.#pictures);
    await Promise.race([this.#startWithLast(), waits]);
  }

  async #startWithLast(): Promise<void> {
    try {
      preferencesStore.setState(preferencesFrom(await this.#library.kept(PREFERENCES)), true);
      const last = await this.#library.kept(LAST_OPEN);
      const shelved = typeof last === 'string' ? await this.#library.load(last) : null;
      if (shelved !== null) await this.#show(shelved);
      else {
        const [first] = await this.#library.list();
        const next = first === undefined ? null : await this.#library.load(first.id);
        if (next !== null) await this.#show(next);
        else await this.openSample();
      }
    } catch (error) {
      tell(troubleOf(error));
      if (atlasStore.getState().open === null) await this.openSample();
    }
    this.#pictures.sweep(this.#now()).catch(this.#report);
    preferencesStore.subscribe((preferences: Preferences) => {
      this.#library.keep(PREFERENCES, preferences).catch(this.#report);
    });
    sessionStore.subscribe(seldom(() => this.#keepAbout(), ABOUT_EVERY_MS));
  }

  /** One undoable step. An edit that changes nothing is none; one that cannot be made says why. */
  edit(edit: Edit): void {
    const { open } = atlasStore.getState();
    if (open === null) return;
    if (open.readOnly !== null) {
      tell({ message: open.readOnly, remedy: '' });
      return;
    }
    const before = documentOfAtlas(open);
    let next: OpenAtlas;
    try {
      next = withStep(open, edit.annotation, edit.apply(before));
    } catch (error) {
      this.#report(error);
      return;
    }
    if (next === open) return;
    atlasStore.setState({ open: next });
    const at = this.#now();
    writing(
      this.#library.append(open.id, open.inForce, edit.annotation, before, documentOfAtlas(next), at),
    ).then(() => {
      this.#kept(open.id, at);
      this.#keepAbout();
    }, this.#notKept(open.id));
  }

  undo(): void {
    this.#step(-1);
  }

  redo(): void {
    this.#step(1);
  }

  async openSample(): Promise<void> {
    const text = this.#granted(await this.#host.sampleAtlas());
    if (text !== null) await this.#adopt(new Blob([text]), 'ossel-down.geojson', null);
  }

  async openFile(): Promise<void> {
    const file = this.#granted(await this.#host.openAtlas());
    if (file !== null)
      await this.#adopt(new Blob([new Uint8Array(file.content)]), file.fileName, file.handle);
  }

  /** An atlas file that was dropped on the window. Where it lies is not known, so saving asks for a place. */
  async openDropped(file: File): Promise<void> {
    await this.#adopt(file, file.name, null);
  }

  async openFromLibrary(id: string): Promise<void> {
    try {
      const shelved = await this.#library.load(id);
      if (shelved !== null) await this.#show(shelved);
    } catch (error) {
      this.#report(error);
    }
  }

  /** An empty sheet, shown in Survey. */
  async startNew(asked?: NewAtlas): Promise<void> {
    await this.#place(newAtlas(asked), null, null);
    sessionStore.setState({ workspace: 'survey' });
  }

  /** Names an atlas of the library, the open one or another: an undoable step of its own either way. */
  async rename(id: string, name: string): Promise<void> {
    if (atlasStore.getState().open?.id === id) this.edit(namedAtlas(name));
    else await nameShelved(this.#library, id, name, this.#now()).catch(this.#report);
  }

  /** Puts a copy of an atlas as it stands on the shelf, without its journal and its file. */
  async duplicate(id: string): Promise<void> {
    await copyShelved(this.#library, id, this.#now()).catch(this.#report);
  }

  /** Takes an atlas off the shelf and returns how to put it back, journal and all; the open one gives way to another. */
  async remove(id: string): Promise<(() => Promise<void>) | null> {
    try {
      const taken = await this.#library.takeOff(id);
      if (taken === null) return null;
      if (atlasStore.getState().open?.id === id) {
        atlasStore.setState({ open: null });
        const [next] = await this.#library.list();
        if (next === undefined) await this.startNew();
        else await this.openFromLibrary(next.id);
      }
      return () => this.#library.putBack(taken).catch(this.#report);
    } catch (error) {
      this.#report(error);
      return null;
    }
  }

  async save(): Promise<void> {
    await this.#write(false);
  }

  async saveAs(): Promise<void> {
    await this.#write(true);
  }

  atlases(): Promise<readonly ShelfRow[]> {
    return this.#library.list();
  }

  /** An atlas of the library as it stands, to be looked at only. */
  look(id: string): Promise<AtlasDocument | null> {
    return documentOnShelf(this.#library, id);
  }

  /** Whoever plays in the other atlases of the library; nobody where it cannot be read. */
  async playersElsewhere(): Promise<readonly PlayersOfAtlas[]> {
    try {
      return await playersElsewhere(this.#library, atlasStore.getState().open?.id ?? null);
    } catch (error) {
      this.#report(error);
      return [];
    }
  }

  async print(html: string, suggestedName: string): Promise<void> {
    this.#granted(await this.#host.printPlaybook(html, suggestedName));
  }

  /** Keeps a file of another format where the person says; false when they changed their mind. */
  async keep(suggestedName: string, content: Uint8Array): Promise<boolean> {
    return this.#granted(await this.#host.keepFile(suggestedName, content)) ?? false;
  }

  /** Resolves when every step so far is on the disk. */
  settled(): Promise<void> {
    return this.#library.settled();
  }

  readonly #report = (error: unknown): void => tell(troubleOf(error));

  #notKept(id: string): (error: unknown) => void {
    return (error) => {
      this.#update(id, { keptAt: null });
      this.#notKeptWords = troubleOf(error).message;
      this.#report(error);
    };
  }

  #granted<T>(result: HostResult<T>): T | null {
    if (result.ok) return result.value;
    tell({ message: result.reason, remedy: '' });
    return null;
  }

  /** Writes the open atlas to its file; asks for a place where none is known, or where that one has not the right ending. */
  async #write(elsewhere: boolean): Promise<void> {
    const { open } = atlasStore.getState();
    if (open === null) return;
    const document = documentOfAtlas(open);
    try {
      const { fileHandle, fileName } = open;
      const asBundle = !elsewhere && fileName?.toLowerCase().endsWith('.zip') === true;
      const written = await writtenAtlas(document, this.#pictures, asBundle);
      const fits = (fileName?.toLowerCase().endsWith('.zip') === true) === (written.ending === '.zip');
      if (!elsewhere && fileHandle !== null && fits) {
        const saved = await this.#host.saveAtlas(fileHandle, written.content);
        if (!saved.ok) {
          tell({ message: saved.reason, remedy: '' });
          return;
        }
        this.#update(open.id, { inFile: document });
      } else {
        const base = fileName?.replace(/\.(geojson|json|zip)$/i, '') ?? fileNameFrom(headerOf(document).name);
        const suggested = fits && fileName !== null ? fileName : base + written.ending;
        const saved = this.#granted(await this.#host.saveAtlasAs(suggested, written.content));
        if (saved === null) return;
        // What can only be read here is worked on as an atlas of its own from now on.
        if (open.readOnly !== null)
          await this.#place(document, saved.fileName, saved.handle, sessionStore.getState());
        else this.#update(open.id, { fileHandle: saved.handle, fileName: saved.fileName, inFile: document });
      }
      this.#keepAbout();
      for (const name of written.missing)
        tell({
          message: `${name}: the file of this picture is not here, so it is not in the bundle.`,
          remedy: 'Open the bundle it came with, or lay it anew from its own file.',
        });
    } catch (error) {
      this.#report(error);
    }
  }

  async #adopt(content: Blob, fileName: string, handle: string | null): Promise<void> {
    try {
      const read = await this.#reading.read(content, fileName);
      if (read === null) return;
      for (const file of read.pictures.values()) await this.#pictures.keep(file, this.#now());
      await this.#place(read.document, fileName, handle);
      for (const message of read.damaged)
        tell({ message, remedy: 'The rest is as it was saved; lay the picture anew from its own file.' });
    } catch (error) {
      this.#report(error);
    }
  }

  /** Shows a document that is not on the shelf yet, and puts it there. */
  async #place(
    document: AtlasDocument,
    fileName: string | null,
    fileHandle: string | null,
    session = firstSession,
  ): Promise<void> {
    this.#reading.cancel();
    const id = crypto.randomUUID();
    const at = this.#now();
    const inFile = fileName === null ? null : document;
    const shelf = {
      id,
      name: headerOf(document).name,
      updatedAt: at,
      fileName,
      stepsInFile: inFile === null ? null : 0,
      session,
    };
    let keptAt: number | null = null;
    const held = await holdAtlas(id, true);
    try {
      await this.#library.add(shelf, document);
      await this.#library.keep(LAST_OPEN, id);
      keptAt = at;
    } catch (error) {
      this.#report(error);
    }
    this.#setOpen(
      {
        id,
        history: historyOf(document),
        inForce: 0,
        fileName,
        fileHandle,
        inFile,
        keptAt,
        readOnly: held ? null : ELSEWHERE,
      },
      session,
    );
  }

  async #show(asked: ShelvedAtlas): Promise<void> {
    this.#reading.cancel();
    const held = await holdAtlas(asked.shelf.id);
    if (held) await this.#library.trim(asked.shelf.id);
    // Another window may have written until it let go.
    const { shelf, base, steps } = (await this.#library.load(asked.shelf.id)) ?? asked;
    const inForce = Math.min(shelf.stepsInForce, steps.length);
    const open: OpenAtlas = {
      id: shelf.id,
      history: historyFrom(base, steps, inForce),
      inForce,
      fileName: shelf.fileName,
      fileHandle: null,
      inFile: shelf.stepsInFile === null ? null : stateAt(base, steps, shelf.stepsInFile),
      keptAt: shelf.updatedAt,
      readOnly: held ? null : ELSEWHERE,
    };
    this.#setOpen(open, sessionFrom(shelf.session));
    this.#library.keep(LAST_OPEN, shelf.id).catch(this.#report);
  }

  #setOpen(open: OpenAtlas, session: Session): void {
    // Nothing is open in between, so that no session is kept with the wrong atlas.
    atlasStore.setState({ open: null });
    sessionStore.setState(withHole(session, documentOfAtlas(open)), true);
    atlasStore.setState({ open });
  }

  #step(by: -1 | 1): void {
    const { open } = atlasStore.getState();
    const next = open === null ? null : stepped(open, by);
    if (open === null || next === null || next === open || open.readOnly !== null) return;
    atlasStore.setState({ open: next });
    const at = this.#now();
    writing(this.#library.moveTo(open.id, next.inForce, at)).then(
      () => this.#kept(open.id, at),
      this.#notKept(open.id),
    );
  }

  #kept(id: string, keptAt: number): void {
    takeBackNotice(this.#notKeptWords);
    this.#update(id, { keptAt });
  }

  #update(id: string, change: Partial<OpenAtlas>): void {
    const { open } = atlasStore.getState();
    if (open?.id === id) atlasStore.setState({ open: { ...open, ...change } });
  }

  #keepAbout(): void {
    const { open } = atlasStore.getState();
    if (open?.readOnly !== null) return;
    this.#library
      .keepAbout(open.id, {
        session: sessionStore.getState(),
        fileName: open.fileName,
        stepsInFile: stepsAt(open, open.inFile),
      })
      .catch(this.#report);
  }
}
