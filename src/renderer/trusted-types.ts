/**
 * The content policy of the window lets no text become code. What still has to be allowed is the address of our
 * own worker scripts: this one policy lets files of our own origin through and nothing else, and has no way to
 * make HTML or scripts. Import it before anything that starts a worker.
 */

interface PolicyMaker {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): unknown;
}

/** The address, when it is a file of ours. @throws TypeError for any other, which also stops the worker */
export function ownScriptAddress(address: string, page: string): string {
  const own = new URL(page);
  const asked = new URL(address, own);
  // The program's own scheme has the origin “null” in a URL object, so that scheme and host are compared.
  if (asked.protocol === own.protocol && asked.host === own.host && asked.protocol !== 'blob:')
    return asked.href;
  throw new TypeError(
    `a script from ${asked.protocol}//${asked.host} is not one of this program's own files`,
  );
}

const maker = (globalThis as { readonly trustedTypes?: PolicyMaker }).trustedTypes;
maker?.createPolicy('default', {
  createScriptURL: (address) => ownScriptAddress(address, globalThis.location.href),
});
