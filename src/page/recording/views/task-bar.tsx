import type { Task } from './use-task.ts';

interface Props {
  readonly task: Task<unknown>;
  readonly start: string;
  readonly doing: string;
  /** Something else sounds or listens just now. */
  readonly wait: boolean;
}

/** The button that starts a task, or how far it is and the button that stops it. */
export function TaskBar({ task, start, doing, wait }: Props) {
  if (!task.running)
    return (
      <button type="button" class="main" disabled={wait} onClick={task.start}>
        {task.outcome === null ? start : 'Once more'}
      </button>
    );
  return (
    <div class="task">
      <p role="status">{doing}</p>
      <progress value={task.share} max={1} aria-label={doing} />
      <button type="button" onClick={task.stop}>
        ■ Stop
      </button>
    </div>
  );
}
