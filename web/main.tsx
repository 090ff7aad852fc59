import '@fontsource-variable/overpass/wght.css';
import './style/tokens.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no #root element');
createRoot(root).render(<StrictMode>{null}</StrictMode>);
