import { rounded } from './figures.ts';
import { dimensionName } from './names.ts';
import { type Facts, numberOf, type SentenceTable, textOf } from './sentence-table.ts';

const plain = (facts: Facts, name: string, decimals = 1) => rounded(numberOf(facts, name), decimals);

const range = (facts: Facts) => `(${plain(facts, 'low')} to ${plain(facts, 'high')})`;

const percentRange = (facts: Facts) =>
  `(${rounded(numberOf(facts, 'low') * 100)} to ${rounded(numberOf(facts, 'high') * 100)})`;

const hand = (letter: string) => (letter === 'L' ? 'left' : 'right');

const otherHand = (letter: string) => (letter === 'L' ? 'right' : 'left');

const inLine = (facts: Facts) => (facts.line === undefined ? '' : ` in line ${facts.line}`);

const mostlyHand = (facts: Facts) =>
  facts.hand === undefined ? '' : `, the ${hand(textOf(facts, 'hand'))} hand more than the other`;

const atBpm = (facts: Facts) => (facts.bpm === undefined ? 'this tempo' : `${plain(facts, 'bpm', 0)} BPM`);

function missedAndExtra(f: Facts): string {
  if (numberOf(f, 'extra') === 0)
    return `${plain(f, 'missed')} % of the strokes written weren't heard ${range(f)}.`;
  if (numberOf(f, 'missed') === 0)
    return `${plain(f, 'extra')} % more strokes were heard than written ${range(f)}.`;
  return `Of the strokes written ${plain(f, 'missed')} % weren't heard, and ${plain(f, 'extra')} % more were heard than written: together ${plain(f, 'value')} % ${range(f)}.`;
}

/** What the bend looks like to the ear, by place and direction. */
const bends: Readonly<Record<string, string>> = {
  'before early': 'The stroke before an accent comes early, as if making room for it',
  'before late': 'The stroke before an accent comes late and crowds it',
  'on early': 'Accents come early: the rhythm rushes into them',
  'on late': 'Accents come late: the rhythm waits for them',
  'after early': 'The stroke after an accent comes early and crowds the accent',
  'after late': 'The stroke after an accent comes late: it leaves a gap',
};

const turnPlace = (f: Facts) =>
  `${f.line === undefined ? '' : `line ${textOf(f, 'line')}, `}repeat ${textOf(f, 'repeat')}, bar ${textOf(f, 'bar')}, beat ${textOf(f, 'beat')}`;

/** Where accents are heard: by the partial's number where every beat has the same one. */
function accentsCome(f: Facts): string {
  if (f.playedPartial !== undefined) {
    return `accents are heard on partial ${textOf(f, 'playedPartial')}, where partial ${textOf(f, 'writtenPartial')} is written`;
  }
  return `accents come ${textOf(f, 'by')} ${f.by === 1 ? 'partial' : 'partials'} ${textOf(f, 'direction')}`;
}

/** What gives way, as far as it was measured. */
function fading(f: Facts): string {
  const said = [
    ['timing-spread-trend', (v: string) => `timing scatters ${v} % more than at the start`],
    ['tap-level-trend', (v: string) => `taps are ${v} dB louder`],
    ['ratio-trend', (v: string) => `accents stand ${v} dB less above taps`],
  ] as const;
  return said.flatMap(([id, say]) => (f[id] === undefined ? [] : [say(plain(f, id))])).join(', ');
}

/** What to work on. Remedies are common practice among teachers, and say so. */
export const adviceSentences: SentenceTable = {
  'taps-too-loud': (f) =>
    `Accents stand ${plain(f, 'value')} dB above the taps${inLine(f)} ${range(f)}; asked for: at least ${plain(f, 'wantedDb', 0)} dB. Leave the accents as they are and let the taps get softer. Common practice: play the line with no accents at all, as softly as it stays even, then let the accents come back in.`,
  'contrast-too-wide': (f) =>
    `Accents stand ${plain(f, 'value')} dB above the taps${inLine(f)} ${range(f)}; asked for: at most ${plain(f, 'wantedDb', 0)} dB. Let the accents come down to a comfortable loudness until line and accents sound of a piece.`,
  'accents-uneven': (f) =>
    `Accents spread by ${plain(f, 'value')} dB in loudness ${range(f)}${mostlyHand(f)}. Common practice: choose a comfortable accent, the softest of those you played, and match every other one to it at a slow tempo.`,
  'taps-uneven': (f) =>
    `Taps spread by ${plain(f, 'value')} dB in loudness ${range(f)}${mostlyHand(f)}. Common practice: play the line softly without accents and listen for one loudness in both hands, then put the accents back.`,
  'accents-and-taps-overlap': (f) =>
    `In ${rounded(numberOf(f, 'value') * 100)} % of pairs ${percentRange(f)} a tap is as loud as an accent or louder. Common practice: play slowly, say the accents aloud, and keep every stroke between them soft.`,
  'partial-off-place': (f) =>
    `Partial ${textOf(f, 'partial')} comes ${plain(f, 'value')} ms ${textOf(f, 'direction')} against its even place in the beat ${range(f)}. Common practice: count every partial aloud, first with a click on each of them, then with a click on the beat alone.`,
  'bend-at-accent': (f) =>
    `${bends[`${textOf(f, 'place')} ${textOf(f, 'direction')}`] ?? 'The rhythm bends at the accent'}: ${plain(f, 'value')} ms ${range(f)}. Common practice: play the line evenly without accents, keep counting the partials aloud, and add the accents without letting the count change.`,
  'hands-apart-in-time': (f) =>
    `The ${hand(textOf(f, 'laterHand'))} hand lands ${plain(f, 'value')} ms later than the ${otherHand(textOf(f, 'laterHand'))} ${range(f)}, with accents and partials allowed for. Common practice: play both hands together until two strokes sound as one, then alternate again.`,
  'hands-apart-in-ratio': (f) =>
    `Accents stand ${plain(f, 'rightDb')} dB above taps in the right hand and ${plain(f, 'leftDb')} dB in the left: ${plain(f, 'value')} dB apart ${range(f)}. Common practice: lead the line with the ${hand(textOf(f, 'flatterHand'))} hand and let its taps get as soft as the other's.`,
  'moving-tempo': (f) =>
    `The tempo ${textOf(f, 'direction')} by ${plain(f, 'value')} % from start to end ${range(f)}. Common practice: play with the click on, then with the click silent for a bar at a time, and hear where it comes back.`,
  'other-tempo': (f) =>
    `The take is ${plain(f, 'value')} % ${textOf(f, 'direction')} than the tempo asked for ${range(f)}. Common practice: let two bars of click go by and count along before the first stroke.`,
  'strokes-missed': (f) =>
    `${missedAndExtra(f)} Listen to the spots: if the strokes are there, put the phone nearer; if not, common practice is a slower tempo until all are there.`,
  'strokes-extra': (f) =>
    `${missedAndExtra(f)} Listen to the spots: they may be bounces, noises or strokes played twice.`,
  'timing-uneven': (f) =>
    `Strokes scatter by ${plain(f, 'value')} % of a partial ${range(f)}${f.spreadMs === undefined ? '' : `, ${plain(f, 'spreadMs')} ms`}, in no one direction. Common practice: a slower tempo with a click on every partial, then up in small steps as long as it stays even.`,
  'taps-after-accents-loud': (f) =>
    `The tap right after an accent is ${plain(f, 'value')} dB louder than the other taps ${range(f)}. Common practice: play the accent and the tap after it alone, slowly, until that tap is as soft as the others, then the whole line.`,
  'accents-off-from-start': (f) =>
    `${f.line === undefined ? 'From the start' : `From the start of line ${textOf(f, 'line')}`} ${accentsCome(f)}. Common practice: read the line again, count its partials aloud at a slow tempo and name the accented one, then play it.`,
  'accents-turned-round': (f) =>
    `From ${turnPlace(f)} on, ${accentsCome(f)}${numberOf(f, 'times') > 1 ? `, and the beat turns ${textOf(f, 'times')} times in all` : ''}: the beat turned round, or a partial was dropped or put in there. Common practice: count the beat aloud while you play, first slowly, with a click whose first beat sounds different.`,
  'accents-lost': (f) =>
    `${plain(f, 'value')} % of the accents written sounded like taps ${range(f)}. Common practice: play the line slowly, say the accents aloud, and let every accent be of one kind before the tempo rises.`,
  'fades-at-the-end': (f) =>
    `Towards the end the playing gives way: ${fading(f)}. That is a matter of rest, not of tempo: take a break now, then play shorter takes.`,
  'nothing-to-mend': () => 'Everything that could be measured is secure.',
  'nothing-stands-out': () =>
    'No one fault stands out: the figures short of secure might be secure. Record the line once more, with more repeats, to know.',
  'tempo-waits-for-discomfort': () =>
    "You noted discomfort, so there is no tempo to try next. Stop at pain, tingling or numbness and don't play through it; see a physician or physiotherapist. No medical advice comes from here.",
  'tempo-start': (f) =>
    f.fromBpm === f.toBpm
      ? `Start at ${plain(f, 'fromBpm', 0)} BPM.`
      : `Start between ${plain(f, 'fromBpm', 0)} and ${plain(f, 'toBpm', 0)} BPM, a little below the tempo at which this line was cleanest.`,
  'tempo-start-slower': (f) =>
    `Start ${f.fromBpm === f.toBpm ? `at ${plain(f, 'fromBpm', 0)}` : `between ${plain(f, 'fromBpm', 0)} and ${plain(f, 'toBpm', 0)}`} BPM: no tempo was clean on any day yet, and ${atBpm(f)} was tried last.`,
  'tempo-after-rest': (f) =>
    `Leave the tempo at ${atBpm(f)}: rest a few minutes, then play shorter takes at it, with breaks between them.`,
  'tempo-up': (f) =>
    `Secure at ${atBpm(f)} on two different days: go up ${f.toBpm === undefined ? 'by 4 to 6 BPM' : `to ${plain(f, 'fromBpm', 0)}–${plain(f, 'toBpm', 0)} BPM`}.`,
  'tempo-needs-second-day': (f) =>
    `Secure at ${atBpm(f)}. Play it like this on another day; if it is secure then too, go up ${f.toBpm === undefined ? 'by 4 to 6 BPM' : `to ${plain(f, 'fromBpm', 0)}–${plain(f, 'toBpm', 0)} BPM`}.`,
  'tempo-settle-first': (f) =>
    `Settle the tempo first: asked for were ${plain(f, 'bpm', 0)} BPM, played were ${plain(f, 'played', 0)}. Grade again with the one you meant, or play it again at the one asked for.`,
  'tempo-stay': (f) =>
    `Stay at ${atBpm(f)} until this is secure: ${dimensionName(textOf(f, 'dimension')).toLowerCase()}. Clean strokes at a held tempo are worth more than speed.`,
  'tempo-under-break': (f) =>
    `Practise where it still holds: at ${plain(f, 'bpm', 0)} BPM or a little below. What gives way first above it: ${dimensionName(textOf(f, 'dimension')).toLowerCase()}.`,
  'tempo-under-stop': (f) =>
    `Practise at ${plain(f, 'bpm', 0)} BPM, the fastest that was played whole, or a little below, before you try ${plain(f, 'stoppedBpm', 0)} again.`,
  'tempo-rise-further': (f) =>
    `Nothing broke up to ${plain(f, 'bpm', 0)} BPM. On another day let it rise further, if your hands feel well.`,
  'tempo-rise-from-slower': (f) =>
    `Not even the slowest tempo surely held: ${dimensionName(textOf(f, 'dimension')).toLowerCase()}. Next time begin at about ${plain(f, 'bpm', 0)} BPM.`,
  'tempo-down': (f) =>
    `Timing and dynamics both need room at ${atBpm(f)}: try ${f.toBpm === undefined ? 'about 10 % slower' : `${plain(f, 'toBpm', 0)} BPM, about 10 % slower`}.`,
};
