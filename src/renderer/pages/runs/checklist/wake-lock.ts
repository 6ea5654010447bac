/** Keeps the screen from going dark while the checklist is on it, where the system lets a window ask for that. */
import { useEffect } from 'react';

export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let left = false;

    async function ask() {
      try {
        // The system takes the lock back whenever the window is out of sight.
        const given = await (navigator as Partial<Navigator>).wakeLock?.request('screen');
        if (left) await given?.release();
        else lock = given;
      } catch {
        // refused, or the battery is low: the screen may go dark, as it would without this
      }
    }
    function seenAgain() {
      if (document.visibilityState === 'visible') void ask();
    }

    void ask();
    document.addEventListener('visibilitychange', seenAgain);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', seenAgain);
      void lock?.release();
    };
  }, []);
}
