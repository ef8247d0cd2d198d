import { useMemo, useState } from 'preact/hooks';
import { maskId } from '../../core/exercise/accent-masks.ts';
import { type Exercise, findExercise, listExercises } from '../../core/exercise/catalogue.ts';
import { divisions } from '../../core/exercise/divisions.ts';
import { stickingsFor } from '../../core/exercise/stickings.ts';
import { Choice } from '../shell/choice.tsx';

interface Props {
  /** Id of the exercise. */
  readonly exercise: string;
  readonly choose: (exercise: string) => void;
}

const left = '-left';
const plainId = (id: string) => (id.endsWith(left) ? id.slice(0, -left.length) : id);

/** The catalogue, narrowed by division, accents and hands; the one that is chosen stays on the list. */
export function ChooseExercise({ exercise, choose }: Props) {
  const chosen = findExercise(exercise);
  const [parts, setParts] = useState(chosen?.division.parts ?? 3);
  const [accents, setAccents] = useState('');
  const [sticking, setSticking] = useState(chosen?.sticking.id ?? '');
  const leftFirst = chosen?.lead === 'L';

  const listed = useMemo(() => {
    const narrowed = {
      division: parts,
      ...(accents === '' ? {} : { accents }),
      ...(sticking === '' ? {} : { sticking }),
    };
    return listExercises(narrowed);
  }, [parts, accents, sticking]);
  const masks = [...new Set(listExercises({ division: parts }).map((one) => maskId(one.accents, parts)))];
  const division = (text: string) => {
    const wanted = Number(text);
    setParts(wanted);
    setAccents('');
    if (stickingsFor(wanted).every(({ id }) => id !== sticking)) setSticking('hand-to-hand');
  };

  return (
    <div class="choose-exercise">
      <div class="filters">
        <Choice label="Notes" value={`${parts}`} set={division}>
          {divisions.map(({ parts: of, name }) => (
            <option key={of} value={of}>
              {name}
            </option>
          ))}
        </Choice>
        <Choice label="Accents" value={accents} set={setAccents}>
          <option value="">any</option>
          {masks.map((mask) => (
            <option key={mask} value={mask}>
              {maskWords(mask)}
            </option>
          ))}
        </Choice>
        <Choice label="Hands" value={sticking} set={setSticking}>
          <option value="">any</option>
          {stickingsFor(parts).map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choice>
      </div>
      <fieldset class="exercise-list">
        <legend>{listed.length === 1 ? 'One exercise' : `${listed.length} exercises`}</legend>
        <div class="rows" tabIndex={-1}>
          {listed.map((one) => (
            <Row
              key={one.id}
              exercise={one}
              chosen={one.id === plainId(exercise)}
              choose={() => choose(leftFirst ? one.id + left : one.id)}
            />
          ))}
        </div>
      </fieldset>
      <label class="tick">
        <input
          type="checkbox"
          checked={leftFirst}
          onChange={({ currentTarget }) =>
            choose(currentTarget.checked ? plainId(exercise) + left : plainId(exercise))
          }
        />
        Left hand first
      </label>
    </div>
  );
}

interface RowProps {
  readonly exercise: Exercise;
  readonly chosen: boolean;
  readonly choose: () => void;
}

function Row({ exercise: { division, accents, sticking, beats, notation }, chosen, choose }: RowProps) {
  const mask = maskId(accents, division.parts);
  const shown = beats.length > 4 ? `${notation.split(' ').slice(0, 4).join(' ')} …` : notation;
  return (
    <label class="row">
      <input type="radio" name="exercise" checked={chosen} onChange={choose} />
      <span>
        <strong>{maskWords(mask)}</strong>, {sticking.name}
        <span class="letters">{shown}</span>
      </span>
    </label>
  );
}

function maskWords(mask: string): string {
  if (mask === 'none') return 'no accents';
  if (mask === 'all') return 'all accented';
  return `accent on ${mask.replaceAll('+', ' and ')}`;
}
