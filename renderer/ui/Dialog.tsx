import { X } from 'lucide-react';
import { useLayoutEffect, useRef } from 'react';

interface DialogProps {
  readonly title: string;
  readonly close: () => void;
  /** As wide as the window allows, for what needs a picture or a table. */
  readonly wide?: boolean;
  readonly children: React.ReactNode;
}

/** A sheet over the window, shown while it is in the tree; Escape and the cross close it. */
export function Dialog({ title, close, wide = false, children }: DialogProps): React.JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  // Closed while it is still in the page, it gives the focus back to what opened it.
  useLayoutEffect(() => {
    const element = dialog.current;
    if (element?.open === false) {
      element.showModal();
      // The cross comes first in the sheet, but what is asked for is what a person wants to type into, or else to press.
      (
        element.querySelector<HTMLElement>(
          'input:not([hidden], :disabled, [type=radio]:not(:checked)), select:not(:disabled), textarea:not(:disabled)',
        ) ?? element.querySelector<HTMLElement>('.button.filled:not(:disabled)')
      )?.focus();
    }
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className={wide ? 'dialog wide' : 'dialog'} aria-label={title} onClose={close}>
      <div className="dialog-head">
        <h2>{title}</h2>
        <button
          type="button"
          className="icon-button"
          aria-label="Close"
          onClick={() => dialog.current?.close()}
        >
          <X size={19} strokeWidth={1.9} aria-hidden />
        </button>
      </div>
      {children}
    </dialog>
  );
}
