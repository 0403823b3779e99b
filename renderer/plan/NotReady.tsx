import { FolderOpen, Map as MapIcon } from 'lucide-react';
import { ToSurvey } from '../ui/ToSurvey.tsx';
import { Trouble, type TroubleWords } from '../ui/Trouble.tsx';
import './answer.css';

interface NotReadyProps {
  readonly trouble: TroubleWords;
  readonly toSurvey: () => void;
  readonly openFile: () => void;
  readonly openSample: () => void;
}

/** Why a hole cannot be planned, and the ways on from there. */
export function NotReady({ trouble, toSurvey, openFile, openSample }: NotReadyProps): React.JSX.Element {
  return (
    <div className="answer-empty">
      <h1 className="answer-name">Not ready to plan</h1>
      <Trouble trouble={trouble} />
      <div className="actions">
        <ToSurvey go={toSurvey} filled />
        <button type="button" className="button" onClick={openFile}>
          <FolderOpen size={18} strokeWidth={1.9} aria-hidden /> Open a file
        </button>
        <button type="button" className="button" onClick={openSample}>
          <MapIcon size={18} strokeWidth={1.9} aria-hidden /> Open the sample course
        </button>
      </div>
    </div>
  );
}
