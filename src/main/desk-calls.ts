/** The window's calls to the desk: each is answered only when our own page, and no frame in it, asks. */
import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { answer } from '../desk/index.ts';
import { channelNames, type Desk } from '../preload/index.ts';
import { bad } from '../quantity/index.ts';
import { isOurs } from './own-address.ts';

export function setupDeskCalls(ipcMain: Pick<IpcMain, 'handle'>, desk: Desk): void {
  for (const channel of channelNames) {
    ipcMain.handle(`desk:${channel}`, (event, args: unknown) => {
      const detail = strangerIn(event);
      return detail === undefined ? answer(desk, channel, args) : bad('desk.not-allowed', 'Desk', { detail });
    });
  }
}

function strangerIn({ sender, senderFrame }: IpcMainInvokeEvent): string | undefined {
  if (senderFrame === null) return 'the page that asked is gone';
  if (senderFrame !== sender.mainFrame) return 'a frame inside the page asked';
  return isOurs(senderFrame.url) ? undefined : 'another page asked';
}
