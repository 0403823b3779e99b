import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-700.css';
import '@fontsource/source-serif-4/latin-400.css';
import '@fontsource/source-serif-4/latin-400-italic.css';
import '@fontsource/source-serif-4/latin-600.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { host } from './bridge/host.ts';
import { Library } from './library/library.ts';
import { Desk } from './store/desk.ts';
import { BookPlanning } from './store/bookPlanning.ts';
import { PlanCache } from './store/planCache.ts';
import { Planning } from './store/planning.ts';
import './ui/base.css';
import './ui/bars.css';
import { adoptTokens, showTheme } from './ui/theme.ts';
import { PlanningThread } from './workers/planningThread.ts';
import { startPlanningWorker } from './workers/startPlanningWorker.ts';
import { Turns } from './workers/turns.ts';

adoptTokens();
showTheme('auto', 'usual')();

const desk = new Desk(new Library(), host());
const plans = new PlanCache();
const turns = new Turns();
const thread = (): PlanningThread => new PlanningThread(startPlanningWorker);
const threads = { first: thread(), hand: thread(), long: thread() };
const planning = new Planning(threads, plans, turns);
const cores = Math.min(4, Math.max(1, navigator.hardwareConcurrency));
const bookThreads = [threads.first, threads.hand, threads.long, thread()].slice(0, cores);
const book = new BookPlanning(bookThreads, threads.long, plans, turns);
const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id "root"');

void desk.start().then(() => {
  planning.start();
  createRoot(root).render(<App desk={desk} planning={planning} book={book} />);
});
