import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Shows recordings that were left behind, where there are any; nothing of that is loaded where there are none. */
export function RecoveredHere() {
  const [View, setView] = useState<ComponentType | null>(null);
  useEffect(() => {
    let gone = false;
    const look = async () => {
      const { recoverTakes } = await import('../kept/recover-takes.ts');
      if ((await recoverTakes()).length === 0) return;
      const { GradeRecovered } = await import('./grade-recovered.tsx');
      if (!gone) setView(() => GradeRecovered);
    };
    // Without it the page works; the recordings are there the next time.
    look().catch(() => undefined);
    return () => {
      gone = true;
    };
  }, []);
  return View === null ? null : <View />;
}
