/** Time since the run was started. */
import { useEffect, useState } from 'react';

export function Clock({ since }: { since: string }) {
  const [seconds, setSeconds] = useState(() => elapsed(since));
  useEffect(() => {
    const ticking = window.setInterval(() => setSeconds(elapsed(since)), 1000);
    return () => window.clearInterval(ticking);
  }, [since]);
  const pad = (n: number): string => String(n).padStart(2, '0');
  return (
    <div className="clock" role="timer" aria-label="Time since the start">
      {pad(Math.floor(seconds / 3600))}:{pad(Math.floor(seconds / 60) % 60)}:{pad(seconds % 60)}
    </div>
  );
}

/** A clock that went backwards shows nought, not a negative time. */
function elapsed(since: string): number {
  return Math.max(0, Math.floor((Date.now() - Date.parse(since)) / 1000));
}
