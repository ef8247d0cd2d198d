import { describe, expect, it } from 'vitest';
import { exercisesCommand } from '../../src/cli/exercises-command.ts';
import { listExercises } from '../../src/core/exercise/catalogue.ts';
import { parseNotation } from '../../src/core/exercise/parse-notation.ts';
import { runCommand } from './run-command.ts';

const run = (...args: string[]) => runCommand(exercisesCommand, args);

describe('exercises command', () => {
  it('lists every exercise, a line each, and talks on stderr', async () => {
    const { stdout, stderr } = await run();
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toHaveLength(listExercises().length);
    for (const line of lines) {
      expect(parseNotation(line.replace(/^\S+\s+/, '')).ok).toBe(true);
    }
    expect(stderr).toContain(`${lines.length} exercises`);
  });

  it('narrows the list by accents, sticking, division and words', async () => {
    const doubles = await run('--accents', '2+1', '--sticking', 'RRLL', '--division', '3');
    expect(doubles.stdout).toBe('triplet-1+2-doubles  >R>RL >L>RR >L>LR >R>LL\n');
    expect((await run('--division', 'triplet', '--find', 'three row second note')).stdout).toMatch(
      /^triplet-2-triples +R>RR L>LL R>RR L>LL\n/,
    );
  });

  it('says on stderr when nothing fits', async () => {
    const { stdout, stderr, exitCode } = await run('--find', 'polka');
    expect([stdout, exitCode]).toEqual(['', 0]);
    expect(stderr).toContain('No exercise fits');
  });

  it('shows one exercise in columns', async () => {
    const { stdout, stderr } = await run('triplet-1-doubles-left');
    expect(stdout).toBe(
      [
        'triplet-1-doubles-left',
        'Triplets, doubles, left hand first; accent on the first note of each beat, as many for the right hand as for the left.',
        '',
        '>LLR >RLL >RRL >LRR',
        '',
        'count    1  trip  let   2  trip  let   3  trip  let   4  trip  let',
        'accents  >              >              >              >',
        'hands    L  L     R     R  L     L     R  R     L     L  R     R',
        '',
      ].join('\n'),
    );
    expect(stderr).toBe('');
  });

  it("shows notation of one's own, also when it begins with a rest", async () => {
    expect((await run('R>LR L>RL')).stdout).toContain('hands    R  L     R     L  R     L\n');
    expect((await run('--', '-LR')).stdout).toContain('hands    -  L     R\n');
  });

  it('writes JSON', async () => {
    const one = JSON.parse((await run('triplet-3-triples', '--json')).stdout);
    expect(one).toEqual({
      id: 'triplet-3-triples',
      name: 'Triplets, accent 3, three in a row',
      notation: 'RR>R LL>L RR>R LL>L',
      description:
        'Triplets, three in a row; accent on the third note of each beat, as many for the right hand as for the left.',
      division: 3,
      accents: [3],
      sticking: 'triples',
      lead: 'R',
    });
    const many = JSON.parse((await run('--json', '--sticking', 'paradiddle')).stdout);
    expect(many.map(({ sticking }: { sticking: string }) => sticking)).toEqual(Array(10).fill('paradiddle'));
    expect(JSON.parse((await run('--json', '--find', 'polka')).stdout)).toEqual([]);
    expect(JSON.parse((await run('--json', 'R-L')).stdout)).toMatchObject({ name: 'R-L', notation: 'R-L' });
  });

  it.each([
    [['triplte-1-doubles'], 'Did you mean "triplet-1-doubles"?'],
    [['RLR RXR'], '  RLR RXR\n       ^'],
    [['--accents', 'loud'], '--accents loud'],
    [['--division', '7'], '3 (triplets)'],
    [['--sticking', 'dobles'], 'Did you mean doubles?'],
    [['triplet-1-doubles', '--find', 'x'], 'not both'],
    [['--colour'], '--colour'],
    [['a', 'b'], 'too many arguments'],
  ])('refuses %j with the reason on stderr', async (args, reason) => {
    const { stdout, stderr, exitCode } = await run(...args);
    expect(stdout).toBe('');
    expect(stderr).toContain(reason);
    expect(exitCode).toBeGreaterThan(0);
  });

  it('has help whose examples run', async () => {
    const { stdout } = await run('--help');
    const examples = [...stdout.matchAll(/^ {2}evenhand exercises (.+)$/gm)].map((found) => found[1]!);
    expect(examples.length).toBeGreaterThanOrEqual(3);
    for (const example of examples) {
      const args = example.match(/"[^"]*"|\S+/g)!.map((arg) => arg.replaceAll('"', ''));
      expect((await run(...args)).stdout).not.toBe('');
    }
  });
});
