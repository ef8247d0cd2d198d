import { existsSync } from 'node:fs';
import { parseJson } from '../core/result/parse-json.ts';
import type { Rubric } from '../core/scoring/rubric.ts';
import { rubrics } from '../core/scoring/rubrics/index.ts';
import { CommandFault } from './command-fault.ts';
import { readTextFile } from './read-text-file.ts';

const looksLikePath = (text: string) => /[./\\]/.test(text);

/**
 * The rubric that `--rubric` names: one that ships, by its id, or a teacher's file. Throws a usage fault for an
 * unknown id, an unreadable-input fault for a file that is missing or can't be used. What reads files is loaded for
 * them alone.
 */
export async function chosenRubric(named: string): Promise<Rubric> {
  const shipped = rubrics.find((rubric) => rubric.id === named.trim().toLowerCase());
  if (shipped) return shipped;
  if (!looksLikePath(named) && !existsSync(named)) {
    const ids = rubrics.map((rubric) => rubric.id).join(', ');
    throw new CommandFault('usage', `There is no rubric "${named}". Choose one of ${ids}, or name a file.`);
  }
  const text = readTextFile(named, 'rubric');
  const unusable = (what: string) => new CommandFault('unreadableInput', `The rubric "${named}" ${what}`);
  let value: unknown;
  try {
    value = parseJson(text);
  } catch (error) {
    const fault = (error as Error).message.replace(/\s+/g, ' ');
    throw unusable(`is not valid JSON (${fault}). Mend it, or start from a shipped one.`);
  }
  const { InvalidRubric, readRubric } = await import('../core/scoring/read-rubric.ts');
  try {
    return readRubric(value);
  } catch (error) {
    if (!(error instanceof InvalidRubric)) throw error;
    throw unusable(
      `can't be used: ${error.path || 'the file'} is ${error.found}. Allowed: ${error.allowed}.`,
    );
  }
}
