import './styles/fonts.css';
import './styles/base.css';
import './styles/path.css';
import './styles/parts.css';
import './styles/forms.css';
import './styles/fleet.css';
import './styles/letter.css';
import './styles/papers.css';
import './styles/write.css';
import './styles/basis.css';
import './styles/map-editor.css';
import './styles/teardown.css';
import './styles/reading.css';
import './styles/print.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';

const queries = new QueryClient({
  defaultOptions: { queries: { retry: false, refetchOnWindowFocus: false, staleTime: 5_000 } },
});

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
