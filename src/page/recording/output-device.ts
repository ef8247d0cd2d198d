import { keepDevice, keptDevice } from './kept-devices.ts';

/** An output on which the click may sound, or a microphone. */
export interface SoundDevice {
  /** Empty for the system's own choice. */
  readonly id: string;
  /** Name that the system gives it, if it gives one; untrusted text. */
  readonly label: string;
}

type Steered = AudioContext & { readonly sinkId?: unknown; setSinkId?(id: string): Promise<void> };

/** Whether this browser lets a page choose where its sound goes. */
export const canChooseOutput = (): boolean => 'setSinkId' in AudioContext.prototype;

/** Every output with a name; the names are there once the microphone was allowed. */
export async function listOutputs(): Promise<readonly SoundDevice[]> {
  return listDevices('audiooutput');
}

/** Every microphone with a name. */
export async function listInputs(): Promise<readonly SoundDevice[]> {
  return listDevices('audioinput');
}

async function listDevices(kind: MediaDeviceKind): Promise<readonly SoundDevice[]> {
  const devices = (await navigator.mediaDevices?.enumerateDevices?.()) ?? [];
  return devices
    .filter((device) => device.kind === kind && device.deviceId !== '')
    .map(({ deviceId, label }) => ({ id: deviceId, label }));
}

/** Sends the context's sound to an output, and remembers it; false where that can't be. */
export async function chooseOutput(context: AudioContext, id: string): Promise<boolean> {
  const steered = context as Steered;
  if (steered.setSinkId === undefined) return false;
  try {
    await steered.setSinkId(id);
    keepDevice('output', id);
    return true;
  } catch {
    return false;
  }
}

/** Goes back to the output chosen last, where it is still there. */
export async function restoreOutput(context: AudioContext): Promise<void> {
  const id = keptDevice('output');
  if (id !== null && id !== (await currentOutput(context)).id) await chooseOutput(context, id);
}

/**
 * The output that the context sounds on. Behind the system's own choice the list's `default` entry names the device, so
 * that plugging headphones in changes the label, and with it the way.
 */
export async function currentOutput(context: AudioContext): Promise<SoundDevice> {
  const { sinkId } = context as Steered;
  const id = typeof sinkId === 'string' ? sinkId : '';
  const outputs = await listOutputs();
  const found = outputs.find((output) => output.id === (id === '' ? 'default' : id));
  return { id: id === '' ? `default ${found?.label ?? ''}`.trim() : id, label: found?.label ?? '' };
}
