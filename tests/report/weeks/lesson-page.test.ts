import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Lesson } from '../../../src/core/progress/lesson.ts';
import { lessonPage } from '../../../src/report/weeks/lesson-page.ts';
import { lessonsPage } from '../../../src/report/weeks/lessons-page.ts';
import { plainSpaces } from '../../support/plain-spaces.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const parts = { fontFaces: '', sha256, script: null, images: {} };

const nasty = '<img src=x onerror=alert(1)>';
const lesson: Lesson = {
  since: '2026-03-09',
  today: '2026-03-16',
  assignments: [
    {
      assignment: {
        title: nasty,
        note: 'Softly',
        sheetText: 'tempo: 92\n>RLR >LRL ; times: 4\nR>LR L>RL ; name: Accent on two\n',
        dueDay: '2026-03-15',
        doneAt: null,
      },
      plays: [{ day: '2026-03-12', score: 81, tempo: 'asked', bpm: 92 }],
    },
  ],
  days: [
    {
      takes: 2,
      recordedMinutes: 3,
      writtenMinutes: 20,
      strokesRight: 100,
      strokesLeft: 98,
      writtenRight: 0,
      writtenLeft: 0,
    },
  ],
  weakest: [
    {
      exerciseId: 'a',
      label: 'Accent on two',
      takeId: 't',
      place: 1,
      day: '2026-03-12',
      bpm: 92,
      setUp: '',
      figures: { 'timing-spread-share': { value: 6.1, low: 5, high: 7.6 } },
      measure: 'timing-spread-share',
      mark: { value: 79, low: 71, high: 85 },
      others: 84.2,
      likely: { value: 80.3, low: 74.4, high: 86.1 },
      apart: false,
    },
  ],
  exercises: [],
  remarks: [{ text: 'Left waits', author: 'Ms Oduya', moment: 64.2, day: '2026-03-12' }],
  discomfortDays: [],
};
const page = (changes: Partial<Lesson> = {}, sound: string | null = 'data:audio/mpeg;base64,AAAA') =>
  plainSpaces(
    lessonPage({ player: 'Mirelle', lesson: { ...lesson, ...changes }, sounds: [sound] }, parts),
  ).replaceAll(/<\/?bdi>/g, '');

describe('the page for a lesson', () => {
  it('says what was asked, until when and what was played to it', () => {
    const html = page();
    expect(html).toContain('Was due on 2026-03-15, a day ago; played once, on 2026-03-12, best score 81.');
    expect(html).toContain('Accent on two <span class="letters">R&gt;LR L&gt;RL</span>, 92 BPM');
    expect(html).toContain(
      'On 1 day: 2 takes, 3.0 minutes recorded and 20 minutes written down. 100 strokes right, 98 left.',
    );
  });

  it("has a player for the weakest line where its sound is kept, and says so where it isn't", () => {
    expect(page().match(/<audio /g)).toHaveLength(1);
    expect(page()).toContain(
      'uneven in time: 6.1 % of a partial (5.0 to 7.6)</strong>. Likely worth 80 points in that (74 to 86), the other lines 84. Not clearly apart from the others',
    );
    expect(page({}, null)).toContain('No recording of it is kept.');
    expect(page({}, null)).not.toContain('<audio ');
  });

  it('stops all tempo where discomfort was noted, without a diagnosis', () => {
    expect(page({ discomfortDays: ['2026-03-13'] })).toContain('Discomfort was noted: 2026-03-13.');
    expect(page({ discomfortDays: ['2026-03-13'] })).toContain('see a physician or physiotherapist');
  });

  it('shows remarks with their moment, and lets no text become HTML', () => {
    expect(page()).toContain('2026-03-12, at 1:04, Ms Oduya: Left waits');
    expect(page()).not.toContain(nasty);
  });

  it('claims nothing without days to carry it', () => {
    expect(page()).toContain('Too few days yet to say what changed.');
  });
});

it('has a row for every player on the page of all', () => {
  const lessons = ['Mirelle', nasty].map((player) => ({ player, lesson }));
  const html = plainSpaces(lessonsPage({ since: '2026-03-09', today: '2026-03-16', lessons }, parts));
  expect(html.match(/<tr><th scope="row">/g)).toHaveLength(2);
  expect(html).not.toContain(nasty);
  expect(html).toContain('2 takes on 1 day, 23 minutes');
});

it("names each player's next tempos on the page of all, and none where discomfort was noted", () => {
  const like = { exercise: 'a', bpm: 100, technique: null, pad: null, sticks: null, device: null };
  const exercises: Lesson['exercises'] = ['One', 'Two', 'Three', 'Four', nasty, 'Six'].map((label) => ({
    exercise: { label },
    next: { code: 'tempo-up', facts: { bpm: 100, fromBpm: 104, toBpm: 106 } },
    compared: { changes: [], like, leftOut: 0 },
  }));
  const html = (changes: Partial<Lesson>) =>
    plainSpaces(
      lessonsPage(
        {
          since: '2026-03-09',
          today: '2026-03-16',
          lessons: [{ player: 'Mirelle', lesson: { ...lesson, ...changes } }],
        },
        parts,
      ),
    ).replaceAll(/<\/?bdi>/g, '');
  expect(html({ exercises })).toContain('<p>Four: up to 104–106 BPM</p><p>and 2 more on the player');
  expect(html({ exercises })).not.toContain('Six');
  const hurts = html({ exercises, discomfortDays: ['2026-03-13'] });
  expect(hurts).not.toContain('104–106');
  expect(hurts).toContain('<td data-name="next tempo">none while discomfort is noted</td>');
});
