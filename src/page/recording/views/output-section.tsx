import { useEffect, useState } from 'preact/hooks';
import { Choice } from '../../shell/choice.tsx';
import { calibrateDelay } from '../calibration/calibrate-delay.ts';
import { delaysOf, type KeptDelay } from '../calibration/kept-delays.ts';
import { looksWireless } from '../calibration/looks-wireless.ts';
import {
  canChooseOutput,
  chooseOutput,
  currentOutput,
  listOutputs,
  type SoundDevice,
} from '../output-device.ts';
import { calibrationWords } from './calibration-words.ts';
import { dayWords } from './day-words.ts';
import type { SoundingSection } from './sounding-section.ts';
import { TaskBar } from './task-bar.tsx';
import { useTask } from './use-task.ts';

/** Where the click sounds, and how long it is under way from there to the recording. */
export function OutputSection({ microphone, volume, busy, setBusy }: SoundingSection) {
  const { context, deviceId } = microphone;
  const [outputs, setOutputs] = useState<readonly SoundDevice[]>([]);
  const [output, setOutput] = useState<SoundDevice | null>(null);
  const [delay, setDelay] = useState<KeptDelay | null>(null);
  const look = async () => {
    const now = await currentOutput(context);
    setOutput(now);
    setOutputs(await listOutputs());
    setDelay(
      delaysOf({ outputId: now.id, inputId: deviceId, sampleRate: context.sampleRate }).at(-1) ?? null,
    );
  };
  useEffect(() => {
    const again = () => void look();
    again();
    navigator.mediaDevices.addEventListener('devicechange', again);
    return () => navigator.mediaDevices.removeEventListener('devicechange', again);
  }, [microphone]);
  const task = useTask(async (stop, progress) => {
    const outputId = (await currentOutput(context)).id;
    const outcome = await calibrateDelay(microphone, { volume, stop, progress });
    await look();
    return { outputId, outcome };
  }, setBusy);
  const choose = async (id: string) => {
    await chooseOutput(context, id === 'default' ? '' : id);
    await look();
  };
  // A measurement is of the output that it was made on; a wireless one's name needs none.
  const isWireless = output !== null && looksWireless(output.label, null) !== null;
  const made = task.outcome?.outputId === output?.id ? (task.outcome?.outcome ?? null) : null;
  const said = isWireless ? ({ state: 'wireless', by: 'name', latency: null } as const) : made;
  const words = said === null ? null : calibrationWords(said);
  const chosen = output?.id.startsWith('default') ? 'default' : (output?.id ?? 'default');
  return (
    <section aria-labelledby="output-title">
      <h2 id="output-title">3. Ahead of the click or behind it?</h2>
      {canChooseOutput() && outputs.length > 1 ? (
        <Choice label="The click sounds on" value={chosen} set={(id) => void choose(id)}>
          {outputs.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </Choice>
      ) : (
        <p class="quiet">
          {output?.label ? `The click sounds on: ${output.label}. ` : ''}Another output is chosen in the
          settings of the device.
        </p>
      )}
      <p>
        From the page to the loudspeaker and back through the microphone a click takes some hundredths of a
        second, on every output a different time. Once that is measured, a take can tell whether you play
        ahead of the click or behind it. Let the loudspeaker sound, or hold the headphone right against the
        microphone, for six seconds.
      </p>
      <TaskBar
        task={task}
        start="Measure the delay"
        doing="Twelve ticks are played. Hold still …"
        wait={busy}
      />
      <div role="status">
        {words !== null && (
          <div class={`verdict ${words.good ? 'good' : 'poor'}`}>
            <p>
              <strong>{words.good ? '✓ ' : '! '}</strong>
              {words.text}
            </p>
          </div>
        )}
      </div>
      {words === null && !task.running && (
        <p class="quiet">
          {delay === null
            ? 'Not measured for this output yet: takes say nothing of ahead or behind, unless the click can be heard in the recording.'
            : `Measured on ${dayWords(delay.measuredAt)}: ${(1000 * delay.latency).toFixed(1)} ms.`}
        </p>
      )}
    </section>
  );
}
