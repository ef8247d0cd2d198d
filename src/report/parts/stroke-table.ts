import { clockTime } from '../../charts/clock-time.ts';
import { placeName } from '../../charts/place-name.ts';
import { decibels, deviationWords } from '../../charts/stroke-words.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { playButton } from './play-button.ts';

/** Rows up to which every stroke has its own; beyond, only the ones that stand out are listed. */
export const strokesListed = 400;
const farthestListed = 100;

const roles: Record<TakeResult['strokes']['role'][number], string> = {
  matched: '',
  extra: 'one too many',
  doubled: 'a second hit of the same stroke',
  abandoned: 'in a run that was given up, not graded',
  surplus: 'in a time through the line more than asked for, not graded',
  outside: 'outside the exercise, not graded',
};

interface Row {
  readonly time: number;
  readonly cells: readonly string[];
}

/** Every stroke with its place, hand, timing and level, folded away; missed ones among them. */
export function strokeTable(result: TakeResult, withSound = false): string {
  const { strokes, slots } = result;
  const missed = slots.state.flatMap((state, slot) => (state === 'missed' ? [slot] : []));
  const all = strokes.time.map((_, stroke) => stroke);
  if (all.length + missed.length === 0) return '';
  const whole = all.length + missed.length <= strokesListed;
  const chosen = whole ? all : standingOut(result, all);
  const rows = [
    ...chosen.map((stroke) => strokeRow(result, stroke)),
    ...missed.slice(0, farthestListed).map((slot) => missedRow(result, slot)),
  ].sort((a, b) => a.time - b.time);
  const head = ['Time', 'Place', 'Hand', 'Kind', 'Timing', 'Level', 'Remark'];
  const body = rows.map(({ time, cells: [first = '', ...others] }) => {
    const when = withSound && first !== '' ? playButton(time, first) : escapeHtml(first);
    return `<tr><td>${when}</td>${others.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`;
  });
  const title = whole ? 'Every stroke of the take' : 'The strokes that stand out most';
  return `<section id="strokes"><details><summary>${title} (${rows.length})</summary><div class="scroll" tabindex="0"><table>
<thead><tr>${head.map((name) => `<th scope="col">${name}</th>`).join('')}</tr></thead>
<tbody>${body.join('')}</tbody></table></div></details></section>`;
}

function standingOut({ strokes }: TakeResult, all: readonly number[]): number[] {
  const size = (stroke: number) => Math.abs(strokes.deviationMs[stroke] ?? 0);
  const odd = all.filter((stroke) => strokes.role[stroke] === 'extra' || strokes.role[stroke] === 'doubled');
  const far = all.filter((stroke) => strokes.role[stroke] === 'matched').sort((a, b) => size(b) - size(a));
  return [...odd.slice(0, farthestListed), ...far.slice(0, farthestListed)];
}

function strokeRow(result: TakeResult, stroke: number): Row {
  const { strokes, slots } = result;
  const slot = strokes.slot[stroke] ?? null;
  const hand = result.hands === 'not-told' ? null : strokes.hand[stroke];
  const deviation = strokes.deviationMs[stroke] ?? null;
  const time = strokes.time[stroke]!;
  return {
    time,
    cells: [
      clockTime(time, 2),
      slot === null ? '' : placeName(result, slot),
      hand === 'R' ? 'right' : hand === 'L' ? 'left' : '',
      slot === null ? '' : slots.grace[slot] ? 'grace note' : slots.accent[slot] ? 'accent' : 'tap',
      deviation === null ? '' : deviationWords(deviation),
      decibels(strokes.levelDb[stroke]!),
      roles[strokes.role[stroke]!],
    ],
  };
}

/** A missed stroke stands behind the last played one before it. */
function missedRow(result: TakeResult, slot: number): Row {
  const { slots, strokes } = result;
  const before = slots.stroke.slice(0, slot).findLast((stroke) => stroke !== null) ?? null;
  const kind = slots.grace[slot] ? 'grace note' : slots.accent[slot] ? 'accent' : 'tap';
  const hand = slots.hand[slot] === 'R' ? 'right' : 'left';
  const time = before === null ? 0 : strokes.time[before]! + 1e-6;
  return { time, cells: ['', placeName(result, slot), hand, kind, '', '', 'missed'] };
}
