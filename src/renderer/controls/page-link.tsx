/** Leads to another page of the window, or to a record on it. */
import type { ReactNode } from 'react';
import type { Place } from '../place.ts';
import { usePlace } from '../store/context.ts';

export function PageLink({ to, children }: { to: Partial<Place>; children: ReactNode }) {
  const { go } = usePlace();
  return (
    <button type="button" className="plain-button" onClick={() => go(to)}>
      {children}
    </button>
  );
}
