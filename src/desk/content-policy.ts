/**
 * What a page of the window may load and do. The same for the window inside Electron and the one in a browser,
 * so that a violation shows in either. Nothing comes from a network and no text becomes code.
 */

/** Content security policy for one page load; `nonce` allows the style elements that the editor makes. */
export function contentPolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
    // Workers need a policy named default whose createScriptURL lets our own files through; it has no createHTML.
    "require-trusted-types-for 'script'",
    'trusted-types default',
  ].join('; ');
}

/** Headers for every file of the window, whichever way it is served. */
export const fileHeaders: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
};
