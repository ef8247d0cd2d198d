/** Cautions on strain and hearing. Exposure limit: NIOSH 98-126, 85 dBA over eight hours, exchange rate 3 dB. */
export function care(): string {
  return `<section id="care"><h2>Look after yourself</h2>
<p><strong>Hands and arms.</strong> Build up time and tempo slowly and take breaks, about ten minutes in every hour.
Stop when anything hurts, tingles or goes numb, and see a physician or physiotherapist if it comes back. This
is no medical advice.</p>
<p><strong>Ears.</strong> Drums and loud clicks in headphones can harm hearing. Keep the click low, leave one ear free
or use a small speaker, and follow the rules of your place; in the USA the recommended limit is 85 dBA over eight hours,
halved in time for every 3 dB more. Levels measured here say nothing about how loud the room was: a recording
can't tell that.</p></section>`;
}
