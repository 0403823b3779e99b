import { useEffect, useState } from 'react';

/** Files dropped anywhere on the window; says whether some are held over it. */
export function useDrop(drop: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;
    const onDragOver = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onDragLeave = (event: DragEvent): void => {
      // Left for nowhere: the pointer is outside the window.
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      drop([...(event.dataTransfer?.files ?? [])]);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('dragleave', onDragLeave);
    // In the capture phase, so that it is heard also where somebody else takes what was dropped.
    const onEnd = (): void => setOver(false);
    window.addEventListener('drop', onEnd, true);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('dragleave', onDragLeave);
      window.removeEventListener('drop', onEnd, true);
      window.removeEventListener('drop', onDrop);
    };
  }, [drop]);
  return over;
}
