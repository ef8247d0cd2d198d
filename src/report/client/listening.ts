import { clockTime } from '../../charts/clock-time.ts';
import { arrange, leadTime, type Version } from '../listening/arrange.ts';
import { fromBefore } from '../listening/from-before.ts';
import type { ListeningTake } from '../listening/listening-take.ts';
import { mixClicks } from '../listening/mix-clicks.ts';
import { mixPieces, type Sound } from '../listening/mix-pieces.ts';
import type { Arrangement } from '../listening/piece.ts';
import { beatAt, beatWords, type Round, roundSpan } from '../listening/round-span.ts';
import type { ListeningData } from '../parts/listening.ts';
import { decodeSound } from './decode-sound.ts';
import { onMoment } from './on-moment.ts';
import { remarksInPage } from './remarks-in-page.ts';
import { type SoundPlayer, soundPlayer } from './sound-player.ts';

const byId = <E extends HTMLElement>(id: string) => document.getElementById(id) as E | null;

const heardNow: Record<Version, string> = {
  'as-played': 'Now heard: the take as it was played.',
  even: 'Now heard: your strokes on their even places.',
  'taps-lowered': 'Now heard: the taps softer, all as loud as before.',
};

/** Peak that the loudest stroke has at full volume, so that soft recordings can be heard too. */
const fullPeak = 0.5;
const mostGain = 20;

/** Lets a take that is inside the report be heard: from any moment, round and round, slowly, or changed. */
export function listening(
  audio: HTMLAudioElement,
  take: ListeningTake,
  decoding: NonNullable<ListeningData['decoding']>,
): void {
  const tools = byId('listening')!;
  const playButton = byId<HTMLButtonElement>('listen-play')!;
  const slider = byId<HTMLInputElement>('listen-at')!;
  const place = byId('listen-place')!;
  const said = byId('listen-said')!;
  const roundChoice = byId<HTMLSelectElement>('listen-round');
  const half = byId<HTMLInputElement>('listen-half');
  const click = byId<HTMLInputElement>('listen-click');
  const volume = byId<HTMLInputElement>('listen-volume')!;
  const radios = [...document.querySelectorAll<HTMLInputElement>('input[name="version"]')];

  let ready: Promise<{ sound: Sound; player: SoundPlayer; loudest: number }> | undefined;
  /** What is playing: its arrangement, and how its samples lie on the take. */
  let playing: { arrangement: Arrangement; from: number; stretch: number; player: SoundPlayer } | null = null;
  let restingAt = 0;
  let lastChanged: Version = 'even';

  const version = () => (radios.find((radio) => radio.checked)?.value ?? 'as-played') as Version;
  const round = () => (roundChoice?.value ?? 'on') as Round;

  const takeTime = () => {
    if (playing === null) return restingAt;
    const { arrangement, from, stretch, player } = playing;
    const heard = Math.max(0, player.heard() / decoding.sampleRate);
    const inRound = arrangement.goesRound ? heard % arrangement.length : heard;
    return Math.min(take.duration, Math.max(0, from + (inRound - leadTime) / stretch));
  };

  const show = () => {
    const time = takeTime();
    const beat = beatAt(take, time);
    const inBeat = beat !== null && time >= take.beats.from[beat]! - leadTime && time < take.beats.to[beat]!;
    place.textContent = `${clockTime(time, 1)}${inBeat ? `  ${beatWords(take, beat)}` : ''}`;
    slider.value = time.toFixed(2);
    slider.setAttribute('aria-valuetext', place.textContent);
  };

  const rest = () => {
    restingAt = takeTime();
    playing = null;
    playButton.textContent = '▶ Play';
    tools.classList.remove('playing');
    show();
  };

  const prepare = () => {
    ready ??= (async () => {
      const context = new AudioContext({ sampleRate: decoding.sampleRate });
      void context.resume();
      said.textContent = 'Getting the sound ready …';
      const sound = await decodeSound(audio.src, decoding.sampleRate, decoding.print);
      const player = soundPlayer(context, sound.sampleRate, () => {
        restingAt = 0;
        playing = null;
        rest();
      });
      const loudest = sound.samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 1e-4);
      said.textContent = '';
      return { sound, player, loudest };
    })();
    return ready;
  };

  const turn = ({ player, loudest }: { player: SoundPlayer; loudest: number }) =>
    player.setVolume((Number(volume.value) / 100) ** 2 * Math.min(mostGain, fullPeak / loudest));

  /** Plays from a moment of the take, with everything as it is wished now. */
  const playFrom = async (time: number, anew: boolean) => {
    const parts = await prepare();
    const { sound, player } = parts;
    const beat = round() === 'on' ? null : beatAt(take, time);
    const span =
      beat === null ? { from: 0, to: take.duration } : roundSpan(take, beat, round() as 'beat' | 'line');
    const stretch = half?.checked ? 2 : 1;
    const wish = { version: version(), halfSpeed: stretch === 2, ...span, goesRound: beat !== null };
    const arrangement = arrange(take, wish);
    const at = anew && beat !== null ? 0 : Math.max(0, leadTime + stretch * (time - span.from));
    const clicks = click?.checked ?? false;
    const last = arrangement.goesRound ? Number.POSITIVE_INFINITY : arrangement.length * sound.sampleRate;
    const softly = playing === null;
    playing = { arrangement, from: span.from, stretch, player };
    turn(parts);
    player.start(
      (first, count) => {
        if (first >= last) return null;
        const mix = mixPieces(sound, arrangement, first, count);
        if (clicks) {
          const ticks = mixClicks(arrangement, sound.sampleRate, first, count);
          for (let i = 0; i < count; i++) mix[i]! += (ticks[i]! * parts.loudest) / fullPeak;
        }
        return mix;
      },
      Math.round(at * sound.sampleRate),
      softly,
    );
    playButton.textContent = '■ Stop';
    tools.classList.add('playing');
    const draw = () => {
      if (playing === null) return;
      show();
      requestAnimationFrame(draw);
    };
    if (softly) draw();
  };

  const change = () => {
    if (playing !== null) void playFrom(takeTime(), false);
  };
  const goTo = (time: number) => {
    restingAt = Math.max(0, Math.min(take.duration, time));
    if (playing !== null) void playFrom(restingAt, true);
    else show();
  };
  const step = (by: number) => {
    const beat = beatAt(take, takeTime());
    if (beat === null) return;
    goTo(take.beats.from[Math.max(0, Math.min(take.beats.from.length - 1, beat + by))]!);
  };

  playButton.addEventListener('click', () => {
    if (playing === null) return void playFrom(restingAt, true).catch(giveUp);
    playing.player.stop();
    rest();
  });
  const giveUp = () => {
    ready = undefined;
    audio.hidden = false;
    said.textContent = 'This browser could not prepare the sound. Use its own player above.';
  };
  slider.addEventListener('input', () => goTo(Number(slider.value)));
  byId('listen-back')?.addEventListener('click', () => step(-1));
  byId('listen-forth')?.addEventListener('click', () => step(1));
  for (const input of [half, click, roundChoice]) input?.addEventListener('change', change);
  volume.addEventListener('input', () => void ready?.then(turn));
  const choose = () => {
    if (version() !== 'as-played') lastChanged = version();
    said.textContent = heardNow[version()];
    change();
  };
  for (const radio of radios) radio.addEventListener('change', choose);
  byId('listen-switch')?.addEventListener('click', () => {
    const wanted = version() === 'as-played' ? lastChanged : 'as-played';
    for (const radio of radios) radio.checked = radio.value === wanted;
    choose();
  });

  const play = (time: number) => void playFrom(time, true).catch(giveUp);
  onMoment((time) => play(fromBefore(take, time)));
  remarksInPage({ take, moment: takeTime, play });

  audio.hidden = true;
  tools.hidden = false;
  show();
}
