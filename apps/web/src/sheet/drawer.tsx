import { useEffect, useRef, type ReactNode } from 'react';
import { Button } from './button.tsx';
import './drawer.css';

export interface DrawerProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** A leaf that is laid over the sheet from the right; a native dialog, so Escape, focus and readers work as everywhere. What has `data-first` is focused first. */
export function Drawer({ title, onClose, wide = false, children }: DrawerProps): ReactNode {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    if (dialog && !dialog.open) {
      dialog.showModal();
      dialog.querySelector<HTMLElement>('[data-first]')?.focus();
    }
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      className={wide ? 'drawer wide' : 'drawer'}
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === ref.current) onClose();
      }}
    >
      <div className="drawer-inner">
        <header><h2>{title}</h2><Button onClick={onClose}>Close</Button></header>
        {children}
      </div>
    </dialog>
  );
}
