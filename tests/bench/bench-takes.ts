import { type ScenarioName, scenario, scenarioNames, scenarios } from '../../fixtures/generator/scenarios.ts';
import { type BenchTake, benchTake } from './bench-take.ts';
import { heldOutKinds, realKinds, realStrokes, realTake, realTakes } from './real-strokes.ts';

/** Groups whose faults were looked at when constants were set, with other seeds. The others were only ever measured. */
export const tunedGroups: readonly string[] = [
  ...['clean', 'contrast', 'burst', 'room', 'ringing', 'noise', 'click', 'ornament', 'recorded', 'session'],
  'real strokes',
];

const realGroups = [
  { group: 'real strokes', kinds: realKinds },
  { group: 'held-out strokes', kinds: heldOutKinds },
];

/** Every take of one seed, one after the other; `only` keeps those whose name or group contains it. */
export function* takesOf(seed: number, ffmpeg: string | undefined, only = ''): Generator<BenchTake> {
  const wanted = (name: string, group: string) => name.includes(only) || group.includes(only);
  for (const name of scenarioNames) {
    const { group } = scenarios[name as ScenarioName];
    if (wanted(name, group)) yield benchTake(name, group, scenario(name, seed).spec);
  }
  if (ffmpeg === undefined) return;
  for (const { group, kinds } of realGroups) {
    for (const kind of kinds) {
      if (!realTakes.some(({ bpm }) => wanted(`${kind.name} ${bpm}`, group))) continue;
      const strokes = realStrokes(ffmpeg, kind);
      if (strokes === undefined) continue;
      for (const take of realTakes) {
        const name = `${kind.name} ${take.bpm}`;
        if (wanted(name, group)) yield benchTake(name, group, realTake(strokes, take, seed));
      }
    }
  }
}

/** What can't be measured here, in sentences. */
export function missingReal(ffmpeg: string | undefined): string[] {
  if (ffmpeg === undefined) return ['Takes of real strokes were left out: ffmpeg is not installed.'];
  const missing = realGroups
    .flatMap(({ kinds }) => kinds)
    .filter((kind) => realStrokes(ffmpeg, kind) === undefined);
  return missing.map(({ name }) => `Takes of real strokes, ${name}: left out, the sound files are not here.`);
}
