import { useState } from 'preact/hooks';
import type { GuessAnswers, TapsGuess, TempoGuess } from '../../core/progress/guess-truth.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { Choice } from '../shell/choice.tsx';

interface Props {
  readonly result: TakeResult;
  readonly done: (guess: GuessAnswers | null) => void;
}

export const tempoWords: Readonly<Record<TempoGuess, string>> = {
  rushed: 'it got faster',
  dragged: 'it got slower',
  held: 'it held',
};

export const tapsWords: Readonly<Record<TapsGuess, string>> = {
  low: 'they stayed low',
  'too-loud': 'some came too near the accents',
};

/** Asks what the player thinks of the take before the figures are shown. */
export function GuessForm({ result, done }: Props) {
  const { lines } = result.sheet;
  const [line, setLine] = useState('');
  const [tempo, setTempo] = useState('');
  const [taps, setTaps] = useState('');
  const { accent } = result.slots;
  return (
    <section class="guess">
      <h1>What do you think?</h1>
      <p>Guess first, then see: that trains the ear. What you guess is kept with the take.</p>
      {lines.length > 1 && (
        <Choice label="Which line was the weakest?" value={line} set={setLine}>
          <option value="">I can't tell</option>
          {lines.map(({ label }, i) => (
            <option key={`${i} ${label}`} value={i}>
              {`${i + 1}. ${label.slice(0, 60)}`}
            </option>
          ))}
        </Choice>
      )}
      <Choice label="The tempo, from start to end" value={tempo} set={setTempo}>
        <option value="">I can't tell</option>
        {(Object.keys(tempoWords) as TempoGuess[]).map((one) => (
          <option key={one} value={one}>
            {tempoWords[one]}
          </option>
        ))}
      </Choice>
      {accent.includes(true) && accent.includes(false) && (
        <Choice label="The taps" value={taps} set={setTaps}>
          <option value="">I can't tell</option>
          {(Object.keys(tapsWords) as TapsGuess[]).map((one) => (
            <option key={one} value={one}>
              {tapsWords[one]}
            </option>
          ))}
        </Choice>
      )}
      <div class="buttons">
        <button
          type="button"
          class="main"
          onClick={() =>
            done({
              worstLine: line === '' ? null : Number(line),
              tempo: tempo === '' ? null : (tempo as TempoGuess),
              taps: taps === '' ? null : (taps as TapsGuess),
            })
          }
        >
          Show me
        </button>
        <button type="button" onClick={() => done(null)}>
          Don't ask this time
        </button>
      </div>
    </section>
  );
}
