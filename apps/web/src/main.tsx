import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './style/fonts.css';
import './style/tokens.css';
import './style/base.css';
import './style/print.css';
import { App } from './app.tsx';
import { BoardProvider } from './data/index.ts';
import { startTheme } from './sheet/theme.ts';

startTheme();
// The board is on this machine or in this workshop: a failed fetch is told at once, and tried again when the server is back.
const client = new QueryClient({ defaultOptions: { queries: { retry: 1, staleTime: 5_000, networkMode: 'always' }, mutations: { networkMode: 'always' } } });
const board = document.getElementById('board');
if (!board) throw new Error('index.html has no element with the id board');

createRoot(board).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <BoardProvider>
        <App />
      </BoardProvider>
    </QueryClientProvider>
  </StrictMode>,
);
