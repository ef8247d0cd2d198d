interface Props {
  readonly text: string;
  /** What is wrong with the text, or null. */
  readonly fault: string | null;
  readonly write: (text: string) => void;
}

/** The player's own lines in letters, with what can't be read said while they are written. */
export function OwnLines({ text, fault, write }: Props) {
  return (
    <div class="own-lines">
      <label class="field" for="own-text">
        Your notes
      </label>
      <textarea
        id="own-text"
        class="letters"
        rows={3}
        spellcheck={false}
        autocapitalize="characters"
        autocomplete="off"
        aria-describedby="own-help own-fault"
        aria-invalid={fault !== null}
        value={text}
        onInput={({ currentTarget }) => write(currentTarget.value)}
      />
      <p id="own-fault" class="fault" role="status">
        {fault}
      </p>
      <details id="own-help">
        <summary>How notes are written</summary>
        <p>
          One group for each beat, one letter for each note with the hand that plays it: three letters are
          triplets, two eighths, four sixteenths. A <b>&gt;</b> stands before an accent.
        </p>
        <dl class="signs">
          <dt>&gt;RLR &gt;LRL</dt>
          <dd>triplets, accent on the first note of each beat</dd>
          <dt>R-L</dt>
          <dd>a rest on the second note</dd>
          <dt>lR, llR</dt>
          <dd>a flam, a drag</dd>
          <dt>Rz</dt>
          <dd>a buzz</dd>
          <dt>|</dt>
          <dd>a bar line</dd>
          <dt>&gt;RLR ; times: 4 ; rest: 4</dt>
          <dd>four times, then four beats of rest; write the next line below it</dd>
        </dl>
      </details>
    </div>
  );
}
