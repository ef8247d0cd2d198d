declare module 'wav-decoder' {
  interface DecodedWav {
    readonly numberOfChannels: number;
    readonly length: number;
    readonly sampleRate: number;
    readonly channelData: Float32Array[];
  }
  const wavDecoder: {
    readonly decode: { sync(file: ArrayBuffer, options?: { readonly symmetric?: boolean }): DecodedWav };
  };
  export default wavDecoder;
}
