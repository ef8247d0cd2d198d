import { type ScenarioName, scenario, scenarioNames, scenarios } from '../../fixtures/generator/scenarios.ts';
import { type BenchTake, benchTake } from './bench-take.ts';
import { realKinds, realStrokes, realTake, realTakes } from './real-strokes.ts';

/** Groups of scenarios by which constants were set, with seeds below 100. All others only ever measured. */
export const tunedGroups: readonly string[] = [
  ...['clean', 'contrast', 'room', 'ringing', 'noise', 'click', 'session'],
];

/** Group of the takes made of strokes recorded by others. */
export const realGroup = 'real strokes';

/** Every take of one seed, one after the other; `only` keeps those whose name or group contains it. */
export function* takesOf(seed: number, ffmpeg: string | undefined, only = ''): Generator<BenchTake> {
  const wanted = (name: string, group: string) => name.includes(only) || group.includes(only);
  for (const name of scenarioNames) {
    const { group } = scenarios[name as ScenarioName];
    if (wanted(name, group)) yield benchTake(name, group, scenario(name, seed).spec);
  }
  if (ffmpeg === undefined) return;
  for (const kind of realKinds) {
    if (!realTakes.some(({ bpm }) => wanted(`${kind.name} ${bpm}`, realGroup))) continue;
    const strokes = realStrokes(ffmpeg, kind);
    if (strokes === undefined) continue;
    for (const take of realTakes) {
      const name = `${kind.name} ${take.bpm}`;
      if (wanted(name, realGroup)) yield benchTake(name, realGroup, realTake(strokes, take, seed));
    }
  }
}

/** What can't be measured here, in sentences. */
export function missingReal(ffmpeg: string | undefined): string[] {
  if (ffmpeg === undefined) return ['Takes of real strokes were left out: ffmpeg is not installed.'];
  const missing = realKinds.filter((kind) => realStrokes(ffmpeg, kind) === undefined);
  return missing.map(({ name }) => `Takes of real strokes, ${name}: left out, the sound files are not here.`);
}
