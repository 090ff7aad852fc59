import { type ReactNode, useRef } from 'react';

interface FilePickProps {
  children: ReactNode;
  onFiles: (files: File[]) => void;
  /** Endings of names, and types: ".yaml,.json". */
  accept?: string;
  multiple?: boolean;
  disabled?: boolean;
  className?: string;
}

/** A button that lets the reader choose files of their own. */
export function FilePick({ children, onFiles, accept, multiple, disabled, className }: FilePickProps) {
  const input = useRef<HTMLInputElement>(null);
  const open = () => {
    if (input.current === null) return;
    // The same file chosen once more is a choice as well.
    input.current.value = '';
    input.current.click();
  };
  return (
    <>
      <button type="button" className={className} disabled={disabled} onClick={open}>
        {children}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        multiple={multiple}
        onChange={({ target }) => onFiles([...(target.files ?? [])])}
      />
    </>
  );
}
