import { keptSource } from '../formats/kept-source.ts';
import { type OpenRecording, openRecording } from '../formats/open-recording.ts';
import { recordingFaultSentence } from '../formats/recording-fault-sentences.ts';
import { CommandFault } from './command-fault.ts';

/** Opens the recording of a take; `-` is standard input. Throws an unreadable-input fault. */
export function openTake(path: string): OpenRecording {
  const opened = openRecording(path);
  if (opened.ok) return { ...opened, source: keptSource(opened.source) };
  throw new CommandFault('unreadableInput', recordingFaultSentence(opened.name, opened.fault));
}
