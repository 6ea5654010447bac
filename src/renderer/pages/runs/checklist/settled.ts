/**
 * A button that has only just come to where another one was is not pressed by a finger that bounces, or by one that
 * was still answering the item before.
 */
import { useEffect, useState } from 'react';

const SETTLING = 350; // ms; a double tap of a gloved finger is over by then

/** Whether what is shown has stood long enough to be answered. @param shown  names what is shown */
export function useSettled(shown: string): boolean {
  const [settled, setSettled] = useState<string>();
  useEffect(() => {
    const waiting = window.setTimeout(() => setSettled(shown), SETTLING);
    return () => window.clearTimeout(waiting);
  }, [shown]);
  return settled === shown;
}
