/** The one stroke that all pictures, tables and players of a report point at, or none. */
export interface ChosenStroke {
  readonly get: () => number | null;
  /** Index into the result's strokes, or null to let go. */
  readonly choose: (stroke: number | null) => void;
  /** Calls `told` whenever another stroke is chosen. */
  readonly listen: (told: (stroke: number | null) => void) => void;
}

/** A choice that begins empty. */
export function chosenStroke(): ChosenStroke {
  let chosen: number | null = null;
  const listeners: ((stroke: number | null) => void)[] = [];
  return {
    get: () => chosen,
    choose: (stroke) => {
      if (stroke === chosen) return;
      chosen = stroke;
      for (const told of listeners) told(stroke);
    },
    listen: (told) => {
      listeners.push(told);
    },
  };
}
