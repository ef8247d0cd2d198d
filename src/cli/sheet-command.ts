import { Command } from 'commander';
import { writeSheet } from '../core/exercise/write-sheet.ts';
import { writeMusicXml } from '../formats/music-xml/write-music-xml.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { sheetOfFile } from './asked-sheet.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { checkOutputPaths } from './output-paths.ts';

const help = `
Examples:
  evenhand sheet week-7.sheet
  evenhand sheet week-7.sheet --musicxml week-7.musicxml
  evenhand sheet week-7.musicxml

The first checks a sheet and prints it as it was understood. The second writes it as a score
for a notation program, too. The third makes a sheet of a score, plain or compressed: lines
begin at rehearsal marks and repeat signs, R and L under the notes are the hands. Put
> week-7.sheet behind it to keep it. A take can be graded against a score as it is.
`;

/**
 * The command that checks a sheet, prints it, and turns scores into sheets and sheets into scores. The sheet goes to
 * stdout, what was left out or added to stderr.
 *
 * @example await sheetCommand(output).parseAsync(['week-7.sheet'], { from: 'user' })
 */
export function sheetCommand(output: CommandOutput = toProcess): Command {
  return new Command('sheet')
    .description('Check a sheet, or turn a score (MusicXML) into a sheet and back.')
    .argument('<file>', 'a sheet, or a MusicXML score')
    .option('--musicxml <file>', 'write a score for notation programs; - is the screen')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action((path: string, { musicxml }: { readonly musicxml?: string }) => {
      checkOutputPaths(musicxml === undefined ? {} : { musicxml }, undefined, [path]);
      const { sheet, notes } = sheetOfFile(path);
      for (const note of notes) output.stderr(`${note}\n`);
      if (musicxml === '-') return output.stdout(writeMusicXml(sheet));
      output.stdout(writeSheet(sheet));
      if (musicxml === undefined) return;
      const fault = writeAtomically(musicxml, writeMusicXml(sheet));
      if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(musicxml, fault));
      output.stderr(`Wrote ${musicxml}.\n`);
    });
}
