import { type MouseEvent, type ReactNode, useId, useLayoutEffect, useRef } from 'react';

interface DialogProps {
  title: string;
  /** False while it must stay: neither Escape nor a click beside it closes it then. */
  mayClose: boolean;
  onClose: () => void;
  children: ReactNode;
}

/** A dialog over the page, which can do nothing meanwhile. The keyboard is in it, and where it was before afterwards. */
export function Dialog({ title, mayClose, onClose, children }: DialogProps) {
  const box = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  // Before the browser draws, and undone before the element goes: only closing gives the focus back.
  useLayoutEffect(() => {
    const dialog = box.current;
    if (dialog === null) return;
    dialog.showModal();
    dialog.focus();
    return () => dialog.close();
  }, []);
  const clickedBeside = (event: MouseEvent<HTMLDialogElement>) => {
    // A click on what the dialog holds has that for its target; beside it is its backdrop.
    if (event.target === event.currentTarget && mayClose) onClose();
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape does what a click beside the dialog does
    <dialog
      ref={box}
      className="modal"
      aria-labelledby={titleId}
      tabIndex={-1}
      onClick={clickedBeside}
      onCancel={(event) => {
        event.preventDefault();
        if (mayClose) onClose();
      }}
    >
      <div className="dialog">
        <h2 id={titleId}>{title}</h2>
        {children}
      </div>
    </dialog>
  );
}
