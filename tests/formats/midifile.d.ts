declare module 'midifile' {
  interface ReadEvent {
    readonly subtype: number;
    readonly playTime: number;
    readonly channel: number;
    readonly param1: number;
    readonly param2: number;
  }
  export default class MIDIFile {
    constructor(buffer: ArrayBuffer);
    readonly header: { getTicksPerBeat(): number; getFormat(): number };
    getMidiEvents(): ReadEvent[];
    getTrackEvents(
      track: number,
    ): { readonly type: number; readonly subtype: number; readonly data?: number[] }[];
  }
}
