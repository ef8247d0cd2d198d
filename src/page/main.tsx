import './styles/type.css';
import './styles/page.css';
import { render } from 'preact';
import { App } from './app.tsx';

render(<App />, document.getElementById('page')!);
