import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './confirm.css';

interface Props {
  readonly title: string;
  /** What the button that does it says. */
  readonly action: string;
  readonly act: () => void;
  readonly leave: () => void;
  readonly children: ComponentChildren;
}

/** Asks before something that can't be undone. Escape and the first button leave everything as it is. */
export function Confirm({ title, action, act, leave, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="confirm" aria-labelledby="confirm-title" onClose={leave}>
      <h2 id="confirm-title">{title}</h2>
      {children}
      <div class="actions">
        <button type="button" onClick={() => dialog.current?.close()}>
          Leave as it is
        </button>
        <button type="button" class="grave" onClick={act}>
          {action}
        </button>
      </div>
    </dialog>
  );
}
