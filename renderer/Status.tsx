import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import { derivedStore } from './store/planStore.ts';
import { atlasStore, documentOfAtlas, writingStore } from './store/openAtlas.ts';
import { undoAnnotation } from '../shared/atlas/history.ts';
import { percent } from '../shared/units/format.ts';
import type { UnitsPreference } from '../shared/units/preference.ts';
import { readingStore } from './store/readingFile.ts';
import { sessionStore } from './store/session.ts';
import { statusWords, surveyStatus } from './survey/surveyStatus.ts';
import { focusInstead } from './ui/giveFocusBack.ts';
import { StatusBar } from './ui/StatusBar.tsx';

interface StatusProps {
  readonly cancel: () => void;
  readonly units: UnitsPreference;
}

const clock = (at: number): string => {
  const time = new Date(at);
  return `${time.getHours()}:${String(time.getMinutes()).padStart(2, '0')}`;
};
const unitWords = ({ system }: UnitsPreference): string =>
  system === 'yards' ? 'yards, feet, paces' : 'metres, paces';
const counted = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');

/** What takes up again what was stopped stands where the answer would. */
function stopThen(stop: () => void): void {
  stop();
  focusInstead('[data-takes-up]');
}

/** The status bar of the open atlas and its plan. */
export function Status({ cancel, units }: StatusProps): React.JSX.Element {
  const { open } = useStore(atlasStore);
  const { count: writing } = useStore(writingStore);
  const { plan, stage, progress, stopped } = useStore(
    derivedStore,
    useShallow(({ plan, stage, progress, stopped }) => ({ plan, stage, progress, stopped })),
  );
  const workspace = useStore(sessionStore, (now) => now.workspace);
  const survey = useStore(surveyStatus);
  const reading = useStore(readingStore);
  const kept = open?.keptAt ?? null;
  const inFile = open !== null && open.inFile === documentOfAtlas(open);
  const file = open?.fileName ?? null;
  const saved =
    open === null
      ? 'No atlas open'
      : kept === null
        ? 'Not saved: the library cannot be used'
        : writing > 0
          ? 'Saving'
          : file === null || inFile
            ? `Saved ${clock(kept)}`
            : `Changes kept ${clock(kept)}, not yet in ${file}`;
  const shots = plan === null ? 0 : plan.options.reduce((sum, one) => sum + one.finishCodes.length, 0);
  const words =
    progress !== null
      ? stage === 'coarse'
        ? `Sharpening, ${percent(100 * progress)}`
        : 'Working it out'
      : plan === null
        ? ''
        : plan.effort === 'rough'
          ? 'Rough, while it is moved'
          : `${stopped ? 'First answer, stopped: from' : 'Plan from'} ${counted(shots)} simulated shots`;
  if (reading !== null)
    return (
      <StatusBar
        saved={saved}
        savedWell={kept !== null}
        plan={`Reading ${reading.fileName}`}
        progress={reading.share}
        cancel={() => stopThen(reading.cancel)}
        end={unitWords(units)}
      />
    );
  if (workspace === 'survey') {
    const undoable = open === null ? null : undoAnnotation(open.history);
    return (
      <StatusBar
        saved={saved}
        savedWell={kept !== null}
        plan={statusWords(survey, units)}
        progress={null}
        cancel={cancel}
        end={undoable === null ? unitWords(units) : `Undo: ${undoable}`}
      />
    );
  }
  return (
    <StatusBar
      saved={saved}
      savedWell={kept !== null}
      plan={words}
      progress={progress}
      cancel={() => stopThen(cancel)}
      end={unitWords(units)}
    />
  );
}
