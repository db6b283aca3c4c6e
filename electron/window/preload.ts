import { contextBridge, ipcRenderer } from 'electron';
import { pageBridge } from './page-bridge.ts';

contextBridge.exposeInMainWorld('halfdot', pageBridge(ipcRenderer));
