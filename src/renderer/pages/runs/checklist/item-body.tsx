/** What is to be read, above the answers; where it is longer than the screen it is scrolled by key, and so has the focus. */
import type { ReactNode, Ref } from 'react';

export function ItemBody({
  label,
  frame,
  children,
}: {
  label: string;
  frame?: Ref<HTMLElement>;
  children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it may have to be scrolled by key
    <section className="item-body" aria-label={label} tabIndex={0} ref={frame}>
      {children}
    </section>
  );
}
