import { levelsPair, linesPair, placesPair } from '../../charts/weeks/pair-pictures.ts';
import type { WeekPicture } from '../../charts/weeks/week-picture.ts';
import { changeText, conditionList, figureText } from '../../core/progress/progress-words.ts';
import type { FigureDifference, TakeDifference } from '../../core/progress/take-against-take.ts';
import { measureName } from '../../core/result/names.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { embedJson } from '../embed-json.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { care } from '../parts/care.ts';
import { pairSound } from './pair-sound.ts';
import { type PageParts, weekPage } from './week-page.ts';
import { weekData, weekPicture } from './week-picture-html.ts';

/** One of the two takes that are held against each other. Texts are untrusted. */
export interface PairTake {
  readonly result: TakeResult;
  readonly player: string;
  readonly played: string;
  readonly exercise: string;
  readonly conditions: readonly (readonly [name: string, text: string])[];
  /** Data URI of an MP3, or null. */
  readonly sound: string | null;
}

export interface TakePair {
  readonly takes: readonly [PairTake, PairTake];
  readonly compared: TakeDifference;
}

const names = ['first take', 'second take'] as const;

/** Pictures of both takes over each other: what their conditions allow to be compared. */
export function pairPictures({ takes: [a, b], compared: { likeness } }: TakePair): readonly WeekPicture[] {
  if (!likeness.timing) return [];
  const pair = [a.result, b.result] as const;
  const sameLines =
    a.result.sheet.lines.map(({ id }) => id).join() === b.result.sheet.lines.map(({ id }) => id).join();
  return [
    placesPair(pair, names),
    ...(sameLines ? [linesPair(pair, names)] : []),
    ...(likeness.levels ? [levelsPair(pair, names)] : []),
  ].filter(({ lanes }) => lanes.length > 0);
}

/** Two takes beside each other as one HTML file: like with like, figures, pictures, sound; no verdict from one day. */
export function takePairPage(pair: TakePair, parts: PageParts): string {
  const { takes, compared } = pair;
  const pictures = pairPictures(pair);
  const shared = pairSound(takes[0].result, takes[1].result);
  const both = takes.every(({ sound }) => sound !== null) && shared.beats[0].length > 0;
  const data = both ? `<script type="application/json" id="pair-sound">${embedJson(shared)}</script>\n` : '';
  return weekPage(
    {
      kind: 'Two takes against each other',
      title: takes[0].exercise,
      lead: `<div class="two">${takes.map((take, i) => facts(take, names[i]!)).join('')}</div>`,
      body: [
        `<div class="verdict"><p><strong>One take against one: the difference is shown, without a verdict.</strong></p>
<p>A single take is one day's form. To know whether something changed, compare days: a verdict needs three days on each side.</p></div>`,
        unlike(compared),
        listen(takes, both),
        figures(compared),
        pictures.length === 0
          ? ''
          : `<section id="pictures"><h2>Pictures</h2><div class="pictures">${pictures.map((one) => weekPicture(one, parts.images)).join('')}</div></section>`,
        care(),
      ].join('\n'),
      data: data + weekData(pictures),
    },
    parts,
  );
}

function facts({ player, played, exercise, conditions }: PairTake, name: string): string {
  const rows = [['Player', player], ['Played', played], ['Exercise', exercise], ...conditions] as const;
  return `<div><h2>${name.charAt(0).toUpperCase()}${name.slice(1)}</h2><dl class="facts">${rows
    .map(
      ([key, text]) => `<div><dt>${key}</dt><dd>${text === '' ? 'not noted' : outsideText(text)}</dd></div>`,
    )
    .join('')}</dl></div>`;
}

function unlike({ likeness: { differ, unknown, timing, levels } }: TakeDifference): string {
  const parts = [
    ...(differ.length > 0
      ? [`<p><strong>These takes aren't alike: they differ in ${conditionList(differ)}.</strong></p>`]
      : []),
    ...(timing
      ? []
      : [
          '<p>Only takes of one exercise at one tempo and technique are compared, so the figures stand side by side and no difference is worked out.</p>',
        ]),
    ...(timing && !levels
      ? [
          "<p>Levels aren't compared: the same pad, sticks and recording device must be noted with both takes.</p>",
        ]
      : []),
    ...(unknown.length > 0 ? [`<p>Not noted with both takes: ${conditionList(unknown)}.</p>`] : []),
  ];
  return parts.length === 0
    ? '<p>Exercise, tempo, technique, pad, sticks and recording device are alike: like is held against like.</p>'
    : `<div class="unlike">${parts.join('')}</div>`;
}

function listen(takes: TakePair['takes'], both: boolean): string {
  if (takes.every(({ sound }) => sound === null))
    return '<p class="note">No recording is kept with these takes, so there is nothing to listen to.</p>';
  const players = takes.map(({ sound }, i) => {
    const label = `Sound of the ${names[i]}`;
    return `<div><h3>${names[i]!.charAt(0).toUpperCase()}${names[i]!.slice(1)}</h3>${
      sound === null
        ? `<p class="note">Its recording isn't kept.</p>`
        : `<audio id="${i === 0 ? 'first' : 'second'}-sound" controls preload="auto" aria-label="${label}" src="${escapeHtml(sound)}"></audio>`
    }</div>`;
  });
  const controls = `<div class="pair-controls" id="pair-controls" hidden><button type="button" id="pair-switch">⇄ The other take, from the same beat</button>
<label><input type="checkbox" id="pair-matched"> equally loud: the louder take is turned down</label>
<p id="pair-said" role="status" class="note"></p></div>`;
  return `<section id="listen"><h2>Listen to both</h2>
<p class="note">Begin softly, above all in headphones. Without "equally loud" you hear both as they were recorded; what sounds louder easily seems better.</p>
<div class="two">${players.join('')}</div>${both ? controls : ''}</section>`;
}

function figures({ figures: all }: TakeDifference): string {
  const rows = all.filter(({ first, second }) => first !== null || second !== null).map(figureRow);
  return `<section id="both-figures"><h2>Figures</h2><table class="stack"><thead><tr><th scope="col">Figure</th><th scope="col">First</th>
<th scope="col">Second</th><th scope="col">Difference</th></tr></thead><tbody>${rows.join('')}</tbody></table>
<p class="note">In brackets the 95 % interval: what the strokes of this one take can't tell apart.</p></section>`;
}

function figureRow({ figure, first, second, difference, withheld }: FigureDifference): string {
  const cell = (one: typeof first) =>
    one === null
      ? 'not measured'
      : `${figureText(one.value, figure)} (${figureText(one.low, figure)} to ${figureText(one.high, figure)})`;
  const change =
    difference === null
      ? withheld === 'not-measured'
        ? ''
        : 'not compared'
      : figure.scale === 'ratio' && first!.value > 0
        ? changeText(second!.value / first!.value, figure)
        : changeText(difference, figure);
  return `<tr><th scope="row">${escapeHtml(measureName(figure.id))}</th><td data-name="first">${cell(first)}</td><td data-name="second">${cell(second)}</td><td class="word" data-name="difference">${change}</td></tr>`;
}
