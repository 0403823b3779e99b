import { expect, it, vi } from 'vitest';
import type { FromWorker, ToWorker } from '../../../renderer/workers/planningChannel.ts';
import { PlanningClient } from '../../../renderer/workers/planningClient.ts';
import { PlanningThread, type WorkerPort } from '../../../renderer/workers/planningThread.ts';
import { Turns } from '../../../renderer/workers/turns.ts';
import { documentOf } from '../../../shared/atlas/documentChanges.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import type { Plan } from '../../../shared/planner/plan.ts';
import type { PlanQuestion } from '../../../shared/protocol/planning.ts';

/** A worker the test plays itself. */
class Port implements WorkerPort {
  readonly sent: ToWorker[] = [];
  ended = false;
  onmessage: WorkerPort['onmessage'] = null;
  onerror: WorkerPort['onerror'] = null;
  postMessage(message: ToWorker): void {
    this.sent.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: FromWorker): void {
    this.onmessage?.(new MessageEvent('message', { data }));
  }
  get said(): readonly string[] {
    return this.sent.flatMap((message) => {
      if (message.kind === 'document' || message.kind === 'ground') return [];
      const after = message.kind === 'ask' && message.after !== null ? ` after ${message.after}` : '';
      return [`${message.kind} ${message.ticket}${after}`];
    });
  }
}

const flag = (id: string, east = 0): AtlasRecord => ({
  type: 'holeLocation',
  id,
  holeId: 'h',
  label: 'A',
  name: '',
  at: lonLat(east, 50),
});
const question = (document: AtlasDocument): PlanQuestion => ({
  document,
  holeId: 'h',
  ballId: 'b',
  flagId: 'f',
  shotsPerOption: 10,
  seed: 1,
});
// Only its identity matters to the client.
const planNamed = (key: string): Plan => ({ key }) as Plan;

function setUp(dropsOld: boolean, turns = new Turns()) {
  const ports: Port[] = [];
  const thread = new PlanningThread(() => {
    const port = new Port();
    ports.push(port);
    return port;
  });
  const client = new PlanningClient(thread, dropsOld, turns);
  const heard: string[] = [];
  const listener = {
    early: (plan: Plan) => heard.push(`early ${plan.key}`),
    progress: (share: number) => heard.push(`progress ${share}`),
    answer: (plan: Plan) => heard.push(`plan ${plan.key}`),
    problem: (problem: { readonly code: string }) => heard.push(`problem ${problem.code}`),
  };
  const port = (): Port => {
    const last = ports.at(-1);
    if (last === undefined) throw new Error('no worker was started');
    return last;
  };
  return { client, thread, port, ports, heard, listener };
}

it('sends a document once, then only the records that changed', () => {
  const { client, port, listener } = setUp(false);
  const first = documentOf([flag('f'), flag('g')]);
  client.ask('plan', question(first), listener);
  port().say({ kind: 'answer', ticket: 1, answer: planNamed('one') });
  client.ask('plan', question(first), listener);
  port().say({ kind: 'answer', ticket: 2, answer: planNamed('two') });
  const moved = flag('g', 1);
  client.ask('plan', question({ records: new Map(first.records).set('g', moved) }), listener);
  expect(port().sent.filter(({ kind }) => kind === 'document')).toEqual([
    { kind: 'document', fresh: true, changes: [...first.records].map(([id, record]) => ({ id, record })) },
    { kind: 'document', fresh: false, changes: [{ id: 'g', record: moved }] },
  ]);
});

it('sends a question at once to wait in the worker, passes over the older ones that wait, and shows none of their answers', () => {
  const { client, port, heard, listener } = setUp(false);
  const document = documentOf([flag('f')]);
  for (let seed = 1; seed <= 3; seed += 1) client.ask('plan', { ...question(document), seed }, listener);
  expect(port().said).toEqual(['ask 1', 'pass 1', 'ask 2 after 1', 'pass 2', 'ask 3 after 2']);
  port().say({ kind: 'progress', ticket: 1, fraction: 0.5 });
  port().say({ kind: 'answer', ticket: 1, answer: planNamed('stale') });
  port().say({ kind: 'dropped', ticket: 2 });
  port().say({ kind: 'answer', ticket: 3, answer: planNamed('fresh') });
  expect(heard).toEqual(['plan fresh']);
});

it('hears each answer that follows a moving hand, until something else is asked or it is let go', () => {
  const { client, port, heard, listener } = setUp(false);
  const document = documentOf([flag('f')]);
  const following = { ...listener, follows: true };
  for (let seed = 1; seed <= 3; seed += 1) client.ask('plan', { ...question(document), seed }, following);
  port().say({ kind: 'answer', ticket: 1, answer: planNamed('a moment ago') });
  port().say({ kind: 'dropped', ticket: 2 });
  client.ask('plan', question(document), listener);
  port().say({ kind: 'answer', ticket: 3, answer: planNamed('of the hand') });
  port().say({ kind: 'answer', ticket: 4, answer: planNamed('of rest') });
  client.ask('plan', question(document), following);
  client.ask('plan', question(document), following);
  client.cancel();
  port().say({ kind: 'answer', ticket: 5, answer: planNamed('let go') });
  port().say({ kind: 'dropped', ticket: 6 });
  expect(heard).toEqual(['plan a moment ago', 'plan of rest']);
});

it('tells a thorough worker to drop what is no longer wanted', () => {
  const { client, port, heard, listener } = setUp(true);
  const document = documentOf([flag('f')]);
  client.ask('plan', question(document), listener);
  client.ask('plan', question(document), listener);
  expect(port().said).toEqual(['ask 1', 'drop 1', 'ask 2 after 1']);
  port().say({ kind: 'dropped', ticket: 1 });
  client.cancel();
  expect(port().said.at(-1)).toBe('drop 2');
  port().say({ kind: 'dropped', ticket: 2 });
  expect(heard).toEqual([]);
});

it('starts a new worker with the whole document after one has died', () => {
  const { client, port, ports, heard, listener } = setUp(false);
  const document = documentOf([flag('f')]);
  client.ask('plan', question(document), listener);
  port().onerror?.({ message: 'out of memory' } as ErrorEvent);
  expect(heard).toEqual(['problem planner-stopped']);
  client.ask('plan', question(document), listener);
  expect(ports).toHaveLength(2);
  expect(ports[0]?.ended).toBe(true);
  expect(port().sent[0]).toMatchObject({ kind: 'document', fresh: true });
  // One that waited behind the answer at which the worker died is asked of the next.
  client.ask('plan', question(document), listener);
  port().onerror?.({ message: 'out of memory' } as ErrorEvent);
  expect(ports).toHaveLength(3);
  expect(heard).toHaveLength(1);
  port().say({ kind: 'answer', ticket: 4, answer: planNamed('after all') });
  expect(heard.at(-1)).toBe('plan after all');
});

it('lets several ask one worker at once, each hearing its own, all told when it dies', () => {
  const { client, thread, port, heard, listener } = setUp(true);
  const other = new PlanningClient(thread, true, new Turns());
  const theirs = { ...listener, answer: ({ key }: Plan) => heard.push(`other ${key}`) };
  const document = documentOf([flag('f')]);
  client.ask('plan', question(document), listener);
  other.ask('plan', question(document), theirs);
  expect(port().sent.map(({ kind }) => kind)).toEqual(['document', 'ask', 'ask']);
  other.cancel();
  expect(port().sent.at(-1)).toEqual({ kind: 'drop', ticket: 2 });
  port().say({ kind: 'dropped', ticket: 2 });
  other.ask('plan', question(document), theirs);
  port().say({ kind: 'answer', ticket: 3, answer: planNamed('theirs') });
  port().say({ kind: 'answer', ticket: 1, answer: planNamed('ours') });
  expect(heard).toEqual(['other theirs', 'plan ours']);
  client.ask('plan', question(document), listener);
  other.ask('plan', question(document), theirs);
  port().onerror?.({ message: 'out of memory' } as ErrorEvent);
  expect(heard.slice(2)).toEqual(['problem planner-stopped', 'problem planner-stopped']);
});

it('hands ground fitted elsewhere over once, and again to a worker that takes the place of one', () => {
  const { client, thread, port, listener } = setUp(true);
  const document = documentOf([flag('f')]);
  const shape = { originEastM: 0, originNorthM: 0, cellM: 1, columns: 2, rows: 2 };
  thread.giveGround({ groundKey: 'g', surfaceKey: 's', shape, nodes: new Float64Array(16) });
  client.ask('plan', question(document), listener);
  client.ask('plan', question(document), listener);
  expect(port().sent.map(({ kind }) => kind)).toEqual(['document', 'ground', 'ask', 'drop', 'ask']);
  port().say({ kind: 'dropped', ticket: 1 });
  port().onerror?.({ message: 'out of memory' } as ErrorEvent);
  client.ask('plan', question(document), listener);
  expect(port().sent.map(({ kind }) => kind)).toEqual(['document', 'ground', 'ask']);
});

it('lets work done ahead give way to a question, even where old questions finish', () => {
  const { client, port, heard, listener } = setUp(false);
  const document = documentOf([flag('f')]);
  const ahead = { answer: () => heard.push('warm'), problem: () => undefined };
  client.ask('warm', { document, holeId: 'h', flagIds: ['f'] }, ahead, 'ahead');
  client.ask('plan', question(document), listener);
  expect(port().sent).toContainEqual({ kind: 'drop', ticket: 1 });
  port().say({ kind: 'dropped', ticket: 1 });
  port().say({ kind: 'answer', ticket: 2, answer: planNamed('now') });
  expect(heard).toEqual(['plan now']);
});

it('hands on a first answer before the firm one, and none of a question given up', () => {
  const { client, port, heard, listener } = setUp(true);
  const document = documentOf([flag('f')]);
  client.ask('plan', question(document), listener);
  port().say({ kind: 'early', ticket: 1, answer: planNamed('first') });
  port().say({ kind: 'answer', ticket: 1, answer: planNamed('firm') });
  client.ask('plan', question(document), listener);
  client.ask('plan', question(document), listener);
  port().say({ kind: 'early', ticket: 2, answer: planNamed('old') });
  port().say({ kind: 'dropped', ticket: 2 });
  port().say({ kind: 'early', ticket: 3, answer: planNamed('new') });
  expect(heard).toEqual(['early first', 'plan firm', 'early new']);
});

it('lets work nobody waits for hold while a question is answered, and go on once it has been quiet', () => {
  vi.useFakeTimers();
  try {
    const turns = new Turns();
    const [front, back, last] = [setUp(true, turns), setUp(true, turns), setUp(true, turns)];
    const document = documentOf([flag('f')]);
    const told = ({ port }: typeof back): string =>
      port()
        .sent.map((message) => (message.kind === 'ask' && message.held ? 'hold ask' : message.kind))
        .filter((kind) => kind !== 'document')
        .join(' ');
    last.client.ask('plan', question(document), last.listener, 'idle');
    back.client.ask('plan', question(document), back.listener, 'ahead');
    expect([told(back), told(last)]).toEqual(['hold ask', 'hold ask']);
    vi.advanceTimersByTime(300);
    expect([told(back), told(last)]).toEqual(['hold ask goOn', 'hold ask']);
    front.client.ask('plan', question(document), front.listener);
    expect([told(front), told(back), told(last)]).toEqual(['ask', 'hold ask goOn hold', 'hold ask']);
    vi.advanceTimersByTime(10_000);
    expect(told(back)).toBe('hold ask goOn hold');
    front.port().say({ kind: 'answer', ticket: 1, answer: planNamed('asked') });
    expect(told(back)).toBe('hold ask goOn hold');
    vi.advanceTimersByTime(300);
    expect(told(back)).toBe('hold ask goOn hold goOn');
    // One piece of work ahead after another, without a wait between.
    back.port().say({ kind: 'answer', ticket: 1, answer: planNamed('ahead') });
    back.client.ask('plan', question(document), back.listener, 'ahead');
    expect(told(back)).toBe('hold ask goOn hold goOn ask');
    back.port().say({ kind: 'answer', ticket: 2, answer: planNamed('ahead') });
    vi.advanceTimersByTime(300);
    expect(told(last)).toBe('hold ask');
    vi.advanceTimersByTime(1000);
    expect(told(last)).toBe('hold ask goOn');
    // Two of one rank take turns.
    front.client.ask('plan', question(document), front.listener, 'idle');
    expect(told(front)).toBe('ask hold ask');
    last.client.cancel();
    last.port().say({ kind: 'dropped', ticket: 1 });
    vi.advanceTimersByTime(1000);
    expect(told(front)).toBe('ask hold ask goOn');
  } finally {
    vi.useRealTimers();
  }
});
