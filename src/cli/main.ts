/** The command line: the same calculations, margins, reports and checks as the window, without one. */
import { run } from './run.ts';

// Whoever reads only the first lines (`| head`) closes the pipe: no reason to complain.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  stdin: process.stdin,
});
