import type { InputProblem } from '../../shared/words/inputProblem.ts';
import type { Library } from '../library/library.ts';
import type { Pictures } from '../library/pictures.ts';
import { letAtlasGo } from './holdAtlas.ts';
import { takeBackNotice, tell, troubleOf } from './notices.ts';
import { atlasStore } from './openAtlas.ts';

/** Tells what other windows do to the library. Resolves when this window has to wait for one of them. */
export function watchLibrary(library: Library, pictures: Pictures): Promise<void> {
  return new Promise((waits) => {
    let waiting: InputProblem | null = null;
    const watcher = {
      waits: (problem: InputProblem | null) => {
        if (waiting !== null) takeBackNotice(waiting.message);
        waiting = problem;
        if (problem === null) return;
        tell(troubleOf(problem));
        waits();
      },
      lost: (problem: InputProblem) => {
        const { open } = atlasStore.getState();
        letAtlasGo();
        if (open === null) tell(troubleOf(problem));
        else atlasStore.setState({ open: { ...open, readOnly: problem.message } });
      },
    };
    library.watch(watcher);
    pictures.watch(watcher);
  });
}
