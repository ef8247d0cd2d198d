/**
 * Keeps the screen from going dark, where the browser can, until the function that comes back is called. The system
 * lets go of it when the page is hidden; back in sight it is asked for again.
 */
export function keepScreenAwake(): () => void {
  let held: WakeLockSentinel | null = null;
  let over = false;
  const hold = async () => {
    if (over || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      held = await navigator.wakeLock.request('screen');
      if (over) void held.release();
    } catch {
      // A battery nearly empty: the system refuses.
    }
  };
  const again = () => void hold();
  document.addEventListener('visibilitychange', again);
  void hold();
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', again);
    void held?.release().catch(() => undefined);
  };
}
