import { runCli } from './runCli.ts';

// A reader such as `head` may close the pipe early; that is its right.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  throw error;
});

process.exitCode = await runCli(process.argv.slice(2), process);
