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
import { language } from './language/language.ts';
import { speak } from './language/t.ts';
import { keepPage } from './offline/keep-page.ts';

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no #root element');
document.documentElement.lang = language;
// Before the page itself: its tables of words are set when it is loaded.
if (language === 'de') speak((await import('./language/de.json')).default);
const { App } = await import('./App.tsx');
const { SignIn } = await import('./page/SignIn.tsx');
createRoot(root).render(
  <StrictMode>
    <SignIn />
    <App />
  </StrictMode>,
);
keepPage();
