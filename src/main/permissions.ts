/** Electron grants everything unless told otherwise. Here everything is refused but what the checklist needs. */
import type { Session } from 'electron';
import { isOurs } from './own-address.ts';

/** Copying figures as text, and the checklist on the full screen. */
const allowed: ReadonlySet<string> = new Set(['clipboard-sanitized-write', 'fullscreen']);

type Permissions = Pick<
  Session,
  | 'setPermissionRequestHandler'
  | 'setPermissionCheckHandler'
  | 'setDevicePermissionHandler'
  | 'setDisplayMediaRequestHandler'
  | 'setSpellCheckerEnabled'
>;

export function setupPermissions(session: Permissions): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    answer(allowed.has(permission) && details.isMainFrame && isOurs(details.requestingUrl));
  });
  // Most of the web's interfaces ask this one first.
  session.setPermissionCheckHandler((_contents, permission, origin, details) => {
    return allowed.has(permission) && details.isMainFrame && isOurs(origin);
  });
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
  session.setSpellCheckerEnabled(false);
}
