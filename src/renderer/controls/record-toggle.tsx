/** Opens a record below the table that it is a row of, and closes it again. */
import { useEffect, useRef } from 'react';
import { usePlace } from '../store/context.ts';

export function RecordToggle({ id, title }: { id: string; title: string }) {
  const { place, go } = usePlace();
  const open = place.record === id;
  return (
    <button
      type="button"
      className="plain-button"
      aria-expanded={open}
      onClick={() => go({ record: open ? undefined : id })}
    >
      {title}
    </button>
  );
}

/** For the frame of a record that was opened: it is brought into view once. */
export function useBroughtIntoView<T extends HTMLElement>() {
  const frame = useRef<T>(null);
  useEffect(() => {
    frame.current?.scrollIntoView({ block: 'start' });
  }, []);
  return frame;
}
