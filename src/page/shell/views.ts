import type { ComponentType } from 'preact';
import { PractiseView } from '../practise/practise-view.tsx';
import { lazyView } from './lazy-view.tsx';
import type { Route } from './route.ts';

interface ViewProps {
  readonly route: Route;
}

interface ViewEntry {
  readonly name: string;
  /** Its title in the browser's tab, and in the navigation where it has a place there. */
  readonly title: string;
  readonly inNavigation: boolean;
  /** The view in the navigation that it belongs to. */
  readonly under?: string;
  /** Part of the help that fits it. */
  readonly help?: string;
  readonly View: ComponentType<ViewProps>;
}

/** Every view by the first word of its address; the first one is where the page begins. */
export const views: readonly ViewEntry[] = [
  { name: '', title: 'Practise', inNavigation: true, help: 'for-students/in-the-page', View: PractiseView },
  {
    name: 'takes',
    title: 'My takes',
    inNavigation: true,
    help: 'how/where-your-takes-are',
    View: lazyView(async () => (await import('../library/views/takes-view.tsx')).TakesView),
  },
  {
    name: 'compare',
    title: 'Two takes',
    under: 'takes',
    inNavigation: false,
    help: 'for-teachers/compare-weeks',
    View: lazyView(async () => (await import('../weeks/compare-view.tsx')).CompareView),
  },
  {
    name: 'progress',
    title: 'Progress',
    under: 'takes',
    inNavigation: false,
    help: 'for-teachers/compare-weeks',
    View: lazyView(async () => (await import('../weeks/progress-view.tsx')).ProgressView),
  },
  {
    name: 'lesson',
    title: 'For the lesson',
    under: 'takes',
    inNavigation: false,
    help: 'for-teachers/hand-out-work-and-look-back-on-it',
    View: lazyView(async () => (await import('../weeks/lesson-view.tsx')).LessonView),
  },
  {
    name: 'assignments',
    title: 'Assignments',
    under: 'takes',
    inNavigation: false,
    help: 'for-teachers/hand-out-work-and-look-back-on-it',
    View: lazyView(async () => (await import('../assignments/assignments-view.tsx')).AssignmentsView),
  },
  {
    name: 'people',
    title: 'People',
    under: 'takes',
    inNavigation: false,
    help: 'how/where-your-takes-are',
    View: lazyView(async () => (await import('../people/people-view.tsx')).PeopleView),
  },
  {
    name: 'practice-time',
    title: 'Practice time',
    under: 'takes',
    inNavigation: false,
    View: lazyView(async () => (await import('../load/practice-time-view.tsx')).PracticeTimeView),
  },
  {
    name: 'microphone',
    title: 'Microphone',
    inNavigation: true,
    help: 'how/speaker-or-headphones',
    View: lazyView(async () => (await import('../recording/views/microphone-view.tsx')).MicrophoneView),
  },
  {
    name: 'result',
    title: 'The take',
    inNavigation: false,
    help: 'for-students/read-the-result',
    View: lazyView(async () => (await import('../result/result-view.tsx')).ResultView),
  },
  {
    name: 'help',
    title: 'Help',
    inNavigation: true,
    View: lazyView(async () => (await import('../help/help-view.tsx')).HelpView),
  },
];

export const viewOf = (route: Route): ViewEntry => views.find(({ name }) => name === route.name) ?? views[0]!;
