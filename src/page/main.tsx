import './styles/type.css';
import './styles/page.css';
import './styles/page-head.css';
import './styles/controls.css';
import './styles/notation.css';
import './styles/practise.css';
import './styles/playing.css';
import './styles/result.css';
import './styles/help.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { keepFiguresWhole } from './shell/whole-figures.ts';

keepFiguresWhole();
render(<App />, document.getElementById('page')!);
