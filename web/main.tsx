import '@fontsource-variable/overpass/wght.css';
import './style/tokens.css';
import './style/base.css';
import './style/layout.css';
import './style/answer.css';
import './style/tables.css';
import './style/forms.css';
import './style/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no #root element');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
