import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Sheet } from './sheet/sheet.tsx';
import './sheet/sheet.css';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Sheet />
  </StrictMode>,
);
