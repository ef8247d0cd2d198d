import { Choice } from '../shell/choice.tsx';
import { type ClickChoice, clickSounds, mostSubdivisions, silences } from './click-choice.ts';

interface Props {
  readonly click: ClickChoice;
  readonly change: (part: Partial<ClickChoice>) => void;
}

const keysOf = <Key extends string>(table: Readonly<Record<Key, unknown>>) => Object.keys(table) as Key[];

/** How the click sounds, with what it can do to ears beside its volume. */
export function ClickSettings({ click, change }: Props) {
  return (
    <div class="click-settings">
      <label class="field">
        <span>Volume of the click</span>
        <input
          type="range"
          min={0}
          max={100}
          step={1}
          value={Math.round(click.volume * 100)}
          aria-describedby="ears"
          onInput={({ currentTarget }) => change({ volume: Number(currentTarget.value) / 100 })}
        />
      </label>
      <p id="ears" class="quiet">
        As soft as you can still follow, above all in headphones: loud clicks over a long time harm hearing.
      </p>
      <p class="quiet">
        In headphones? <a href="#/microphone">Measure their delay once</a>; then it can be told whether you
        play ahead or behind.
      </p>
      <div class="filters">
        <Choice
          label="Sound"
          value={click.sound}
          set={(value) => change({ sound: value as ClickChoice['sound'] })}
        >
          {keysOf(clickSounds).map((sound) => (
            <option key={sound} value={sound}>
              {clickSounds[sound]}
            </option>
          ))}
        </Choice>
        <Choice
          label="Clicks in a beat"
          value={`${click.subdivisions}`}
          set={(value) => change({ subdivisions: Number(value) })}
        >
          {Array.from({ length: mostSubdivisions }, (_, i) => (
            <option key={i} value={i + 1}>
              {i === 0 ? 'on the beat only' : `${i + 1}`}
            </option>
          ))}
        </Choice>
        <Choice
          label="Silent bars"
          value={click.silence}
          set={(value) => change({ silence: value as ClickChoice['silence'] })}
        >
          {keysOf(silences).map((silence) => (
            <option key={silence} value={silence}>
              {silences[silence].words}
            </option>
          ))}
        </Choice>
      </div>
      <label class="tick">
        <input
          type="checkbox"
          checked={click.bell}
          onChange={({ currentTarget }) => change({ bell: currentTarget.checked })}
        />
        A bell on beat one
      </label>
      <label class="tick">
        <input
          type="checkbox"
          checked={click.strokesShown}
          onChange={({ currentTarget }) => change({ strokesShown: currentTarget.checked })}
        />
        Show the strokes heard while I play
      </label>
    </div>
  );
}
