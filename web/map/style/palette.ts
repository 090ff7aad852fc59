/** The page's colour roles as the map needs them: it cannot read custom properties itself. */
export interface Palette {
  paper: string;
  sheet: string;
  ink: string;
  soft: string;
  rule: string;
  sand: string;
  sea: string;
  /** Rivers and lakes. */
  stream: string;
  /** Roads of the ground. */
  road: string;
  fuel: string;
  water: string;
  dry: string;
}

/** The same values as web/style/tokens.css; a test holds the two together. */
export const LIGHT: Palette = {
  paper: '#f7f2e8',
  sheet: '#fffdf8',
  ink: '#211c15',
  soft: '#6d6456',
  rule: '#ddd3c0',
  sand: '#efe4cd',
  sea: '#e2ebee',
  stream: '#a8c6d4',
  road: '#b8aa92',
  fuel: '#c56a10',
  water: '#0f6ba8',
  dry: '#8e1b4b',
};

export const DARK: Palette = {
  paper: '#171410',
  sheet: '#201c16',
  ink: '#f1e9da',
  soft: '#a99e8b',
  rule: '#3a3328',
  sand: '#2a2419',
  sea: '#18242a',
  stream: '#2f4a57',
  road: '#5d5342',
  fuel: '#f0963c',
  water: '#58b2ec',
  dry: '#ff5f9a',
};
