import { keepDevice, keptDevice } from './kept-devices.ts';
import { faultOfError, type MicrophoneFault, microphoneFault } from './microphone-fault.ts';

/** What a device says it does to the sound; null where it doesn't say. */
export interface MicrophoneSettings {
  readonly echoCancellation: boolean | null;
  readonly noiseSuppression: boolean | null;
  readonly autoGainControl: boolean | null;
  readonly sampleRate: number | null;
  readonly channels: number | null;
}

/** An open microphone. Close it when the view that uses it goes. */
export interface Microphone {
  readonly context: AudioContext;
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
  readonly input: AudioNode;
  readonly deviceId: string;
  /** Name that the system gives it; untrusted text. */
  readonly label: string;
  readonly settings: MicrophoneSettings;
  /** Differs each time a microphone is opened: the way through the browser may come out longer or shorter. */
  readonly session: string;
  close(): void;
}

export type OpenedMicrophone =
  | { readonly state: 'open'; readonly microphone: Microphone }
  | { readonly state: 'fault'; readonly fault: MicrophoneFault };

/**
 * Opens a microphone with every processing of voices off: the one asked for, or the one chosen last, or the system's.
 * Has to be called from a press of a button. What the device says it does is read back; whether it is so,
 * `judgeDeviceProof` tells.
 */
export async function openMicrophone({
  deviceId = keptDevice('input') ?? undefined,
  context,
}: {
  readonly deviceId?: string | undefined;
  /** The context to record in; a new one without it. */
  readonly context?: AudioContext;
} = {}): Promise<OpenedMicrophone> {
  if (!globalThis.isSecureContext) return { state: 'fault', fault: microphoneFault('insecure') };
  if (navigator.mediaDevices?.getUserMedia === undefined || globalThis.AudioWorkletNode === undefined)
    return { state: 'fault', fault: microphoneFault('unsupported') };
  const own = context ?? new AudioContext({ latencyHint: 'interactive' });
  try {
    const stream = await raw(deviceId);
    const [track] = stream.getAudioTracks();
    if (track === undefined) return { state: 'fault', fault: microphoneFault('none') };
    if (own.state !== 'running') await own.resume();
    const input = own.createMediaStreamSource(stream);
    const said = track.getSettings();
    const asBoolean = (value: unknown) => (typeof value === 'boolean' ? value : null);
    const id = said.deviceId ?? '';
    if (id !== '') keepDevice('input', id);
    return {
      state: 'open',
      microphone: {
        context: own,
        stream,
        track,
        input,
        deviceId: id,
        label: track.label,
        settings: {
          echoCancellation: asBoolean(said.echoCancellation),
          noiseSuppression: asBoolean(said.noiseSuppression),
          autoGainControl: asBoolean(said.autoGainControl),
          sampleRate: said.sampleRate ?? null,
          channels: said.channelCount ?? null,
        },
        session: crypto.randomUUID(),
        close() {
          input.disconnect();
          for (const one of stream.getTracks()) one.stop();
          if (context === undefined) void own.close();
        },
      },
    };
  } catch (error) {
    if (context === undefined) void own.close();
    return { state: 'fault', fault: faultOfError(error) };
  }
}

async function raw(deviceId: string | undefined): Promise<MediaStream> {
  const asked = {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    channelCount: 1,
  };
  if (deviceId !== undefined) {
    try {
      return await navigator.mediaDevices.getUserMedia({
        audio: { ...asked, deviceId: { exact: deviceId } },
      });
    } catch (error) {
      // A device that has been unplugged since: the system's own serves.
      if (!(error instanceof Error) || !['OverconstrainedError', 'NotFoundError'].includes(error.name))
        throw error;
    }
  }
  return navigator.mediaDevices.getUserMedia({ audio: asked });
}
