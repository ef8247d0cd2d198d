import { counted } from '../../core/result/figures.ts';
import type { ScoreFault, ScoreNote } from './score.ts';

const lineReasons: Readonly<Record<string, string>> = {
  'notation-too-long':
    'the line is too long; put a double bar line or a rehearsal mark where a new one begins',
  'too-many-beats': 'the line is too long; put a double bar line or a rehearsal mark where a new one begins',
  'too-many-lines': 'there are too many lines; save fewer of them in a score',
};

/** Why a score can't be used, in a sentence that says what to do. */
export function scoreFaultSentence({ code, facts }: ScoreFault): string {
  switch (code) {
    case 'score-unreadable':
      return `The score can't be read: ${facts.reason}. Save it again as MusicXML.`;
    case 'score-not-music':
      return `This is XML but no MusicXML score (it begins with "${facts.root}"). Save the score as MusicXML.`;
    case 'score-timewise':
      return 'This MusicXML score is sorted by time. Save it sorted by parts ("partwise"), as nearly all programs do.';
    case 'score-too-large':
      return `The score has ${facts.characters} characters; ${facts.most} at most are read. Save the exercise alone.`;
    case 'score-without-strokes':
      return 'There are no notes in this score. Choose the score with the exercise.';
    case 'score-endings':
      return `Bar ${facts.bar} has a first or second ending, which can't be read. Write the repeat out, then save the score again.`;
    case 'score-bar-uneven':
      return `Bar ${facts.bar} can't be divided into beats of equal parts, at most twelve in a beat. Write it with plain notes and tuplets.`;
    case 'score-line-unwritable':
      return `The line that begins in bar ${facts.bar} can't be used: ${lineReasons[facts.reason] ?? facts.reason}.`;
  }
}

/** What was left out of a score or added to it. */
export function scoreNoteSentence({ code, facts }: ScoreNote): string {
  switch (code) {
    case 'score-other-parts':
      return `The score has ${counted(facts.parts, 'more part')}, which ${facts.parts === 1 ? 'is' : 'are'} left out.`;
    case 'score-other-voices':
      return `The part has ${counted(facts.voices, 'more voice')}, left out: only the one with most notes is used.`;
    case 'score-chords':
      return `${counted(facts.notes, 'note')} at the same time as another ${facts.notes === 1 ? 'is' : 'are'} left out: one stroke at a time can be graded.`;
    case 'score-sticking-added':
      return `No hand is written at ${counted(facts.strokes, 'stroke')}: hands alternate there. Write R or L under the notes to have it your way.`;
  }
}
