/** The one address that belongs to the window. Scheme and host are also where its working copy is kept: never change them. */
export const scheme = 'app';
export const windowAddress = 'app://window/';

/** Whether the address is the window's own, compared part by part and never as text. */
export function isOurs(address: string): boolean {
  let url: URL;
  try {
    url = new URL(address);
  } catch {
    return false;
  }
  const { protocol, host, username, password } = url;
  return protocol === 'app:' && host === 'window' && username === '' && password === '';
}
