import type { FaultFacts, LibraryFaultCode } from '../../library/library-fault.ts';

/** From the page to the library's worker: a call, or `rest`, which lets other tabs have the library. */
export type LibraryWish =
  | { readonly wish: 'call'; readonly number: number; readonly name: string; readonly argument: unknown }
  | { readonly wish: 'rest' };

/** Back from the worker: what a call gave, or why it failed. */
export type LibraryAnswer =
  | { readonly number: number; readonly ok: true; readonly value: unknown }
  | {
      readonly number: number;
      readonly ok: false;
      readonly code: LibraryFaultCode;
      readonly facts: FaultFacts;
    };
