import type { TakeDetails } from '../../library/new-take.ts';
import { readKept, writeKept } from '../shell/kept.ts';

/** What a player writes down once and every new take is kept with. */
type PlayedOn = Pick<TakeDetails, 'technique' | 'pad' | 'sticks'>;

const key = 'played-on';
const fields = [
  { name: 'technique', label: 'Technique (wrist, finger, whip …)' },
  { name: 'pad', label: 'Pad or drum' },
  { name: 'sticks', label: 'Sticks' },
] as const;
const mostCharacters = 100;

/** What was written down last on this device. */
export function keptPlayedOn(): PlayedOn {
  const kept = readKept(key) as Partial<Record<keyof PlayedOn, unknown>> | null;
  const text = (name: keyof PlayedOn) => {
    const value = kept?.[name];
    return typeof value === 'string' ? value.slice(0, mostCharacters) : '';
  };
  return { technique: text('technique'), pad: text('pad'), sticks: text('sticks') };
}

export const keepPlayedOn = (playedOn: PlayedOn): void => writeKept(key, playedOn);

interface Props {
  readonly playedOn: PlayedOn;
  readonly change: (playedOn: PlayedOn) => void;
}

/** Technique, pad and sticks, kept with every take until they are changed: only takes made alike compare. */
export function PlayedOnFields({ playedOn, change }: Props) {
  const said = fields.map(({ name }) => playedOn[name]).filter((text) => text !== '');
  return (
    <details class="played-on">
      <summary>Technique, pad, sticks: {said.length === 0 ? 'not noted' : said.join(', ')}</summary>
      <p class="quiet">
        Kept with every take until you change it: levels are compared only where pad and sticks are the same.
        None of it is heard from the sound.
      </p>
      <div class="played-on-fields">
        {fields.map(({ name, label }) => (
          <label key={name} class="field">
            <span>{label}</span>
            <input
              type="text"
              maxLength={mostCharacters}
              value={playedOn[name]}
              onInput={({ currentTarget }) => change({ ...playedOn, [name]: currentTarget.value })}
            />
          </label>
        ))}
      </div>
    </details>
  );
}
