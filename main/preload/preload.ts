import { contextBridge } from 'electron';
import { invokeHost } from '../ipc/invokeHost.ts';

/** All that a page of the desktop program sees of it. */
contextBridge.exposeInMainWorld('swaleHost', invokeHost);
