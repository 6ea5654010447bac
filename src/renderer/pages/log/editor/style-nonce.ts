/** The number that lets the editor's own style sheet through the content policy; fresh for each load of the page. */

/** Empty where the page was served without one. */
export function styleNonce(): string {
  const meta = document.querySelector('meta[property="csp-nonce"]');
  // A browser hides the attribute from style sheets and shows it in the property alone.
  return meta instanceof HTMLElement ? meta.nonce : '';
}
