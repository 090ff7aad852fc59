import { useEffect } from 'react';

/** Files dropped anywhere on the page, unless the dialog's own drop zone takes them. */
export function usePageDrop(onFiles: (files: File[]) => void, enabled: boolean): void {
  useEffect(() => {
    if (!enabled) return;
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      onFiles(files);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [onFiles, enabled]);
}
