import { useRoute } from '../../shell/route.ts';
import './library-ways.css';

const ways = [
  { name: 'takes', title: 'All takes' },
  { name: 'progress', title: 'Progress' },
  { name: 'lesson', title: 'For the lesson' },
  { name: 'assignments', title: 'Assignments' },
  { name: 'practice-time', title: 'Practice time' },
  { name: 'people', title: 'People' },
] as const;

/** The ways between what is kept: takes, progress, lessons, assignments, practice time, people. */
export function LibraryWays() {
  const { name, parts } = useRoute();
  return (
    <nav class="library-ways" aria-label="What is kept">
      {ways.map((way) => (
        <a
          key={way.name}
          href={`#/${way.name}`}
          {...(way.name === name && (name !== 'takes' || parts.length === 0)
            ? { 'aria-current': 'page' as const }
            : {})}
        >
          {way.title}
        </a>
      ))}
    </nav>
  );
}
