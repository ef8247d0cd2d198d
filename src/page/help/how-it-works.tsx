/** What the page does and doesn't, in plain words. */
export function HowItWorks() {
  return (
    <article class="help">
      <h1>How it works</h1>
      <h2 id="playing-a-take">Playing a take</h2>
      <ol>
        <li>
          Choose what to play: an exercise from the list, notes of your own, or the sheet your teacher gave
          you.
        </li>
        <li>
          Set the tempo: write it, go up or down by one, or beat it in. Hear it once if you are not sure how
          it goes.
        </li>
        <li>
          Put the microphone an arm's length from the pad, not on the same table: a table carries every stroke
          into it.
        </li>
        <li>
          Press "Play and record". One bar is counted in; then play. The take ends by itself after the last
          beat, or when you press "Stop", the space bar or a pedal.
        </li>
      </ol>
      <h2 id="speaker-or-headphones">Speaker or headphones</h2>
      <p>
        From a speaker, the click is heard in the recording, found and taken out of it, and your strokes are
        held against it. In headphones it isn't in the recording; then the page has to know how long the sound
        takes to you and back. It measures that once for each output (see "Microphone"). Until then, and with
        wireless headphones always, it says nothing of ahead or behind; everything else is told all the same.
      </p>
      <h2>What the figures say</h2>
      <p>
        Each one comes with the range it likely lies in. A short line shows gross faults only, and the range
        says so. Levels of takes made with another pad, phone or place don't compare. Sound tells nothing of
        technique, stick height, grip or tension, and nothing is said of them.
      </p>
      <h2 id="where-your-takes-are">Where your takes are</h2>
      <p>
        On this device, in this browser, under this address, and nowhere else: nothing you play is sent
        anywhere. Another browser or another device has takes of its own; a take file carries takes across.
        Clearing the browser's data for this page deletes them, so save what matters.
      </p>
      <h2>On a phone, and without a net</h2>
      <p>
        After the first visit the page works without a net. "Install" or "Add to home screen" in the browser's
        menu puts it beside your other apps; then a recording made elsewhere can be shared to it.
      </p>
      <h2>Look after yourself</h2>
      <p>
        <strong>Hands and arms.</strong> Build up time and tempo slowly and rest about ten minutes in every
        hour. Stop when anything hurts, tingles or goes numb, and see a physician or physiotherapist if it
        comes back. This page gives no medical advice.
      </p>
      <p>
        <strong>Ears.</strong> Drums and loud clicks in headphones can harm hearing. Keep the click low, leave
        one ear free or use a small speaker, and follow the rules of your place. A recording can't tell how
        loud the room was.
      </p>
      <h2>Keys</h2>
      <dl class="signs">
        <dt>Space, Enter, Page Down</dt>
        <dd>start a take, and stop it; pedals that turn pages send these</dd>
        <dt>Tab</dt>
        <dd>from one control to the next</dd>
      </dl>
    </article>
  );
}
