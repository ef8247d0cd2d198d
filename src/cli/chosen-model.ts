import { linesInModel } from '../core/grading/compare-to-model.ts';
import { modelFromTake, type PlayedModel } from '../core/grading/played-model.ts';
import { parseJson } from '../core/result/parse-json.ts';
import { sentence } from '../core/result/sentences.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { NewerTakeResult, upgradeTakeResult } from '../core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../core/result/validate-take-result.ts';
import { CommandFault } from './command-fault.ts';
import { readTextFile } from './read-text-file.ts';

/**
 * The model in a file that `--json` wrote, for a take of these lines. Throws an unreadable-input fault for a file that
 * is missing or holds no result, or whose take can't be a model, a usage fault for a model of another exercise.
 */
export function chosenModel(path: string, lines: readonly { readonly notation: string }[]): PlayedModel {
  const text = readTextFile(path, 'model');
  const unusable = (what: string) =>
    new CommandFault('unreadableInput', `The model "${path}" can't be used. ${what}`);
  const made = modelFromTake(resultIn(text, unusable));
  if (!made.ok) throw unusable(sentence(made.reason));
  if (linesInModel(lines, made.model).length > 0) return made.model;
  const other = sentence({ code: 'model-of-other-exercise', facts: {} });
  throw new CommandFault('usage', `The model "${path}" doesn't fit. ${other}`);
}

function resultIn(text: string, unusable: (what: string) => CommandFault): TakeResult {
  const hint = 'Choose a file that `evenhand grade --json` wrote.';
  try {
    return upgradeTakeResult(parseJson(text));
  } catch (error) {
    if (error instanceof SyntaxError) throw unusable(`It is not valid JSON. ${hint}`);
    if (error instanceof NewerTakeResult)
      throw unusable(
        'A newer version of Evenhand wrote it. Install that, or grade the model again with this one.',
      );
    if (!(error instanceof InvalidTakeResult)) throw error;
    const where = error.path === '' ? '' : ` (${error.path} ${error.fault})`;
    throw unusable(`It is not the result of a take${where}. ${hint}`);
  }
}
