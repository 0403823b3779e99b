import { expect, it } from 'vitest';
import { Answering } from '../../../renderer/workers/answering.ts';
import { plainProblem } from '../../../renderer/workers/plainProblem.ts';

/** A worker whose steps are taken by hand: each pause lasts until the next one. */
function setUp() {
  const said: string[] = [];
  const paused: (() => void)[] = [];
  const answering = new Answering({
    post: ({ kind, ticket }) => said.push(`${kind} ${ticket}`),
    pause: () => new Promise((resolve) => paused.push(resolve)),
    problemOf: (error) =>
      plainProblem(error, (message) => ({ code: 'failed', message, place: '', remedy: '' })),
  });
  const begun: number[] = [];
  const ask = (ticket: number, after: number | null, steps = 2): void =>
    answering.ask({ kind: 'ask', ticket, after, held: false, early: false }, function* () {
      begun.push(ticket);
      for (let done = 1; done < steps; done += 1) yield done / steps;
      return ticket;
    });
  const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
  const goOn = async (): Promise<void> => {
    await settle();
    for (const resume of paused.splice(0)) resume();
    await settle();
  };
  return { answering, said, begun, ask, goOn };
}

it('lets an answer under way finish, passes over what waited, and begins the newest', async () => {
  const { answering, said, begun, ask, goOn } = setUp();
  ask(1, null, 4);
  await goOn();
  ask(2, 1);
  answering.tell({ kind: 'pass', ticket: 1 });
  answering.tell({ kind: 'pass', ticket: 2 });
  ask(3, 2);
  for (let i = 0; i < 8; i += 1) await goOn();
  expect(said).toEqual(['answer 1', 'dropped 2', 'answer 3']);
  expect(begun).toEqual([1, 3]);
});

it('hears that a waiting question is passed over when the word comes as the one before it ends', async () => {
  const { answering, said, begun, ask, goOn } = setUp();
  ask(1, null, 1);
  ask(2, 1);
  await new Promise((resolve) => setTimeout(resolve));
  expect(said).toEqual(['answer 1']);
  answering.tell({ kind: 'pass', ticket: 2 });
  await goOn();
  expect([said, begun]).toEqual([['answer 1', 'dropped 2'], [1]]);
});

it('gives an answer up at its next pause, and the next question has its turn', async () => {
  const { answering, said, ask, goOn } = setUp();
  ask(1, null, 100);
  await goOn();
  answering.tell({ kind: 'drop', ticket: 1 });
  ask(2, 1);
  for (let i = 0; i < 4; i += 1) await goOn();
  expect(said).toEqual(['dropped 1', 'answer 2']);
});
