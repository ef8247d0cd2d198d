import { useEffect, useRef } from 'preact/hooks';
import { startCapture } from '../capture/start-capture.ts';
import { meterAtRest, meterStep } from '../meter/level-meter.ts';
import type { Microphone } from '../open-microphone.ts';
import { LevelMeter } from './level-meter.tsx';

/** A sound that was cut off is told for so long, s. */
const complaintSeconds = 4;

interface Props {
  readonly microphone: Microphone;
  /** Every block as it comes, for those who want to judge it. */
  readonly listen?: (samples: Float32Array) => void;
}

/** The meter of a microphone that isn't being recorded. */
export function MicrophoneMeter({ microphone, listen }: Props) {
  const meter = useRef(meterAtRest);
  const latest = useRef(listen);
  latest.current = listen;
  useEffect(() => {
    let stop: (() => void) | null = null;
    let gone = false;
    const { context, input } = microphone;
    meter.current = meterAtRest;
    let cutFor = 0;
    const hear = (samples: Float32Array) => {
      meter.current = meterStep(meter.current, samples, context.sampleRate);
      // What was mended isn't complained of for long.
      cutFor = meter.current.levels.clipped ? cutFor + samples.length / context.sampleRate : 0;
      if (cutFor > complaintSeconds)
        meter.current = { ...meter.current, levels: { ...meter.current.levels, clipped: false } };
      latest.current?.(samples);
    };
    void startCapture(context, input, hear, false).then((capture) => {
      if (gone) capture.stop();
      else stop = () => capture.stop();
    });
    return () => {
      gone = true;
      stop?.();
    };
  }, [microphone]);
  const read = useRef(() => meter.current.levels);
  return <LevelMeter read={read.current} />;
}
