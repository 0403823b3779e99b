import { PencilLine } from 'lucide-react';
import { focusInstead } from './giveFocusBack.ts';

interface ToSurveyProps {
  readonly go: () => void;
  /** The first of several ways on. */
  readonly filled?: boolean;
}

/** The way on where ground is missing. */
export const ToSurvey = ({ go, filled = false }: ToSurveyProps): React.JSX.Element => (
  <button
    type="button"
    className={filled ? 'button filled' : 'button to-survey'}
    onClick={() => {
      go();
      focusInstead('.empty-start .way, .survey-map');
    }}
  >
    <PencilLine size={18} strokeWidth={1.9} aria-hidden /> Go to the survey
  </button>
);
