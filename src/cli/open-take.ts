import { type OpenRecording, openRecording } from '../formats/open-recording.ts';
import { recordingFaultSentence } from '../formats/recording-fault-sentences.ts';
import { CommandFault } from './command-fault.ts';
import { spareMemory } from './spare-memory.ts';

/** Opens the recording of a take; `-` is standard input; `told` hears how far decoding has come. Rejects with an unreadable-input fault. */
export async function openTake(path: string, told?: (share: number) => void): Promise<OpenRecording> {
  const opened = await openRecording(path, told ? { told } : {});
  if (opened.ok) {
    spareMemory(opened.source);
    return opened;
  }
  throw new CommandFault('unreadableInput', recordingFaultSentence(opened.name, opened.fault));
}
