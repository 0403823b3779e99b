import { TriangleAlert } from 'lucide-react';
import { useRef } from 'react';
import { useGiveFocusBack } from './giveFocusBack.ts';

/** A sentence about what is wrong, with its place and what to do. */
export interface TroubleWords {
  readonly message: string;
  readonly remedy: string;
}

interface TroubleProps {
  readonly trouble: TroubleWords;
  readonly dismiss?: () => void;
}

/** What went wrong, at the place it concerns. */
export function Trouble({ trouble, dismiss }: TroubleProps): React.JSX.Element {
  const part = useRef<HTMLDivElement>(null);
  useGiveFocusBack(part);
  // The message of an input problem ends with its remedy; said twice it would only be longer.
  const what = trouble.message.endsWith(trouble.remedy)
    ? trouble.message.slice(0, trouble.message.length - trouble.remedy.length).trim()
    : trouble.message;
  return (
    <div className="trouble" role="alert" ref={part}>
      <TriangleAlert size={18} strokeWidth={1.9} aria-hidden />
      <p>
        <strong>{what}</strong> {trouble.remedy}
      </p>
      {dismiss !== undefined && (
        <button type="button" className="link-button" onClick={dismiss}>
          Dismiss
        </button>
      )}
    </div>
  );
}
