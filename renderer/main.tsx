import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { Session } from './state/session.ts';

const session = new Session();
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App session={session} />
  </StrictMode>,
);
void session.begin();
