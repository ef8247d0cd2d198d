import type { TakeResult } from '../../core/result/take-result.ts';
import { embedJson } from '../embed-json.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import type { ListeningTake } from '../listening/listening-take.ts';
import { listeningTake } from '../listening/listening-take.ts';
import { tapsLoweredDb } from '../listening/same-loudness.ts';
import type { SoundPrint } from '../listening/sound-print.ts';

/** The take's sound for its report. */
export type ReportSound =
  /** In the report itself. */
  | {
      readonly place: 'inside';
      readonly uri: string;
      /** Hz */
      readonly sampleRate: number;
      readonly print: SoundPrint | null;
    }
  /** In a file of that name beside the report. */
  | { readonly place: 'beside'; readonly file: string };

/** What the script of the report reads to let a take be heard. */
export interface ListeningData {
  readonly take: ListeningTake;
  /** Null for a sound beside the report. */
  readonly decoding: { readonly sampleRate: number; readonly print: SoundPrint | null } | null;
}

/** The data as a script element, for the end of the page. */
export function listeningData(result: TakeResult, sound: ReportSound): string {
  const take = listeningTake(result);
  const decoding = sound.place === 'inside' ? { sampleRate: sound.sampleRate, print: sound.print } : null;
  const data: ListeningData = { take, decoding };
  return `<script type="application/json" id="listening-data">${embedJson(data)}</script>\n`;
}

/**
 * The take to listen to: the browser's own player, which is there without scripts, and the tools that the script
 * puts in its place. Only tools that the take has beats and places for are offered.
 */
export function listening(result: TakeResult, sound: ReportSound): string {
  const take = listeningTake(result);
  const parts =
    sound.place === 'inside'
      ? inside(take, sound.uri, result.reference.kind === 'heard-click')
      : beside(take, sound.file);
  return `<section id="listen"><h2>Listen</h2>
<p class="note">Begin softly and turn up only as far as you need, above all in headphones: loud sound over a long time harms hearing.</p>
${parts}</section>`;
}

function beside(take: ListeningTake, file: string): string {
  return `<p class="note">The sound is too long to be inside the report. It is in the file ${outsideText(file)}: keep both in the same folder, and send both.</p>
<audio id="sound" controls preload="metadata" src="./${encodeURIComponent(file)}"></audio>
<div class="listening" id="listening" hidden>${roundChoice(take)}</div>`;
}

const metronomeMoves =
  '<p class="note">The metronome in the recording is cut along with the strokes: slowed down or moved, it goes with them. The click offered here stays on the even beat.</p>\n';

function inside(take: ListeningTake, uri: string, metronomeHeard: boolean): string {
  const steps = `<button type="button" id="listen-back" aria-label="One beat back">◀ beat</button>
<button type="button" id="listen-forth" aria-label="One beat on">beat ▶</button>`;
  const beats = take.beats.from.length > 0;
  const click =
    '<label><input type="checkbox" id="listen-click"> a click on every even beat, at the tempo you had just then</label>';
  return `<audio id="sound" controls preload="none" src="${escapeHtml(uri)}"></audio>
<div class="listening" id="listening" hidden>
<div class="transport"><div><button type="button" id="listen-play">▶ Play</button>
${beats ? steps : ''} <output id="listen-place" for="listen-at">0:00.0</output> <button type="button" id="listen-remark" hidden>✎ Remark here</button></div></div>
<input type="range" id="listen-at" min="0" max="${take.duration.toFixed(2)}" step="0.05" value="0" aria-label="Place in the take">
<div class="wishes">${versions(take)}
<fieldset><legend>How you hear it</legend>${roundChoice(take)}
<label><input type="checkbox" id="listen-half"> half speed, each stroke sounding as it did</label>
${beats ? click : ''}
<label>Volume <input type="range" id="listen-volume" min="0" max="100" value="30"></label></fieldset></div>
${metronomeHeard ? metronomeMoves : ''}<p id="listen-said" role="status" class="note"></p></div>`;
}

function versions({ strokes }: ListeningTake): string {
  if (strokes.moveMs.every((move) => move === 0)) return '';
  return `<fieldset><legend>What you hear</legend>
<label><input type="radio" name="version" value="as-played" checked> the take as it was played</label>
<label><input type="radio" name="version" value="even"> your own strokes, each moved to its even place</label>
<label><input type="radio" name="version" value="taps-lowered"> only the taps ${tapsLoweredDb} dB softer, all as loud as before</label>
<button type="button" id="listen-switch">⇄ Switch between played and changed</button></fieldset>`;
}

function roundChoice({ beats }: ListeningTake): string {
  if (beats.from.length === 0) return '';
  return `<label>Over and over: <select id="listen-round"><option value="on">nothing, play on</option>
<option value="beat">this beat</option><option value="line">this time through the line</option></select></label>`;
}
