import { useEffect } from 'react';
import { isPicture } from './addPicture.ts';

/** Hears when a picture is dropped anywhere on the window; other files are left to whoever else listens. */
export function usePictureDrop(add: ((file: File) => void) | null): void {
  useEffect(() => {
    if (add === null) return undefined;
    const allPictures = (event: DragEvent): boolean => {
      const items = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === 'file');
      return items.length > 0 && items.every(isPicture);
    };
    const over = (event: DragEvent): void => {
      if (!allPictures(event)) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'copy';
    };
    const drop = (event: DragEvent): void => {
      if (!allPictures(event)) return;
      event.preventDefault();
      event.stopPropagation();
      const [file] = event.dataTransfer?.files ?? [];
      if (file !== undefined) add(file);
    };
    window.addEventListener('dragover', over, true);
    window.addEventListener('drop', drop, true);
    return () => {
      window.removeEventListener('dragover', over, true);
      window.removeEventListener('drop', drop, true);
    };
  }, [add]);
}
