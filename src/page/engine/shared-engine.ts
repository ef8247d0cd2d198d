import { type Engine, startEngine } from './engine.ts';

let engine: Engine | undefined;

/** The page's one engine, started when it is first asked for. */
export function sharedEngine(): Engine {
  engine ??= startEngine();
  return engine;
}
